package org.underlee.bay;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.geom.Interval;

/**
 * Joins the covering around a pipe or a duct to what it is wrapped around: one crossing, not two.
 */
final class Insulation {
  /** The middles of a pipe and of its insulation lie this near to each other. */
  private static final double CONCENTRIC = 0.01;

  private Insulation() {}

  static List<Crossing> joined(List<Crossing> found) {
    List<Crossing> joined = new ArrayList<>();
    List<Crossing> coverings = found.stream().filter(Insulation::isCovering).toList();
    List<Crossing> used = new ArrayList<>();
    for (Crossing crossing : found) {
      if (!isCovering(crossing)) {
        Optional<Crossing> around =
            coverings.stream().filter(c -> isAround(c, crossing)).findFirst();
        around.ifPresent(used::add);
        joined.add(around.map(crossing::wrappedIn).orElse(crossing));
      }
    }
    coverings.stream().filter(c -> !used.contains(c)).forEach(joined::add);
    return joined;
  }

  private static boolean isCovering(Crossing crossing) {
    return crossing.element().ifcClass().equals("IfcCovering");
  }

  /** Whether both are seen as one in the other when looked at along the way they run. */
  private static boolean isAround(Crossing covering, Crossing inner) {
    boolean stretch = wraps(covering.stretch(), inner.stretch());
    boolean across = wraps(covering.acrossStretch(), inner.acrossStretch());
    boolean heights = wraps(covering.heights(), inner.heights());
    return switch (inner.way()) {
      case THROUGH -> stretch && across;
      case ALONG -> across && heights;
      case ACROSS -> stretch && heights;
    };
  }

  private static boolean wraps(Interval covering, Interval inner) {
    return covering.contains(inner) && Math.abs(covering.middle() - inner.middle()) <= CONCENTRIC;
  }
}
