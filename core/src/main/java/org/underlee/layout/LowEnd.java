package org.underlee.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Role;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;

/**
 * A line that the low end of the pans may follow: the house side of a drop beam, or what bounds the
 * joists at the low end.
 *
 * @param id {@code beam-1} for the first drop beam from the house, {@code joist-end}
 * @param words for people
 * @param members what stands there: their heights say where a hanger can be fixed
 * @param isDropBeam whether the joists lie on it
 * @param passed drop beams nearer to the house, which the pans pass over
 */
record LowEnd(
    String id, String words, List<Support> members, boolean isDropBeam, List<Support> passed) {
  /** Beams nearer to each other than this stand as one. */
  private static final double ONE_BEAM = 0.3;

  static final String JOIST_END = "joist-end";

  /** Every candidate, nearest to the house first. */
  static List<LowEnd> candidates(FieldBays bays) {
    List<Support> beams = new ArrayList<>(bays.field().dropBeams());
    beams.sort(Comparator.comparingDouble(b -> b.shape().along().from()));
    List<LowEnd> found = new ArrayList<>();
    List<Support> passed = new ArrayList<>();
    while (passed.size() < beams.size()) {
      double near = beams.get(passed.size()).shape().along().from();
      List<Support> group =
          beams.subList(passed.size(), beams.size()).stream()
              .filter(b -> b.shape().along().from() < near + ONE_BEAM)
              .toList();
      String id = "beam-" + (found.size() + 1);
      found.add(
          new LowEnd(id, "the house side of the drop beam", group, true, List.copyOf(passed)));
      passed.addAll(group);
    }
    List<Support> low = bays.field().low();
    boolean beam = low.stream().anyMatch(s -> s.role() == Role.FLUSH_BEAM);
    String words =
        low.isEmpty()
            ? "the joists' low ends"
            : "the house side of the " + (beam ? "flush beam" : "rim");
    found.add(new LowEnd(JOIST_END, words, low, false, List.copyOf(passed)));
    return found;
  }

  /** The station of the line in a bay, where the bay reaches it. */
  Optional<Double> faceIn(Bay bay) {
    if (!isDropBeam) {
      return Optional.of(freeEnd(bay));
    }
    double u = (bay.leftFace().at(bay.stretch().to()) + bay.rightFace().at(bay.stretch().to())) / 2;
    return members.stream()
        .map(b -> b.shape().alongAt(u))
        .filter(i -> !i.isEmpty() && bay.stretch().contains(i.from()))
        .map(Interval::from)
        .min(Double::compare);
  }

  /** Where the bay is free over its whole width up to a face that may lie on a slant. */
  private double freeEnd(Bay bay) {
    double end = bay.stretch().to();
    return members.stream()
        .flatMap(
            m ->
                Stream.of(bay.leftFace().at(end), bay.rightFace().at(end))
                    .map(u -> m.shape().alongAt(u).from()))
        .filter(v -> v > bay.stretch().middle())
        .reduce(end, Math::min);
  }

  /** The heights that the members' faces span. */
  Interval heights() {
    double low = members.stream().mapToDouble(m -> m.shape().heights().from()).min().orElse(0);
    double high = members.stream().mapToDouble(m -> m.shape().heights().to()).max().orElse(0);
    return new Interval(low, high);
  }
}
