package org.underlee.bay;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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

  private static boolean isAround(Crossing covering, Crossing inner) {
    boolean wider =
        switch (inner.way()) {
          case THROUGH ->
              covering.stretch().contains(inner.stretch())
                  && covering.acrossStretch().contains(inner.acrossStretch());
          case ALONG ->
              covering.acrossStretch().contains(inner.acrossStretch())
                  && covering.heights().contains(inner.heights());
          case ACROSS ->
              covering.stretch().contains(inner.stretch())
                  && covering.heights().contains(inner.heights());
        };
    boolean concentric =
        switch (inner.way()) {
          case THROUGH ->
              isNear(covering.at(), inner.at()) && isNear(covering.across(), inner.across());
          case ALONG ->
              isNear(covering.across(), inner.across())
                  && isNear(covering.heights().middle(), inner.heights().middle());
          case ACROSS ->
              isNear(covering.at(), inner.at())
                  && isNear(covering.heights().middle(), inner.heights().middle());
        };
    return wider && concentric;
  }

  private static boolean isNear(double a, double b) {
    return Math.abs(a - b) <= CONCENTRIC;
  }
}
