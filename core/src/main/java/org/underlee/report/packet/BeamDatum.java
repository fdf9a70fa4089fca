package org.underlee.report.packet;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.underlee.framing.Field;
import org.underlee.framing.Support;

/**
 * What marks are measured from at the low end: the house side of the first beam, rim or flush beam
 * beyond them, and, for heights that are checked with a level, its top where joists lie on it and
 * its underside where they hang in it.
 *
 * @param face station of that side in the field's frame
 * @param height of the datum in the field's frame; empty where nothing stands at the low end
 * @param isTop whether the datum is the beam's top
 */
record BeamDatum(double face, OptionalDouble height, boolean isTop) {
  /** A beam this much nearer than the last mark is still beyond it: results are to 0.1 mm. */
  private static final double TOUCHING = 0.0005;

  /**
   * As met at one place across the field.
   *
   * @param u across
   * @param from station of the last mark
   * @param end station to measure to where no beam is met
   */
  static BeamDatum beyond(Field field, double u, double from, double end) {
    BeamDatum found = new BeamDatum(end, OptionalDouble.empty(), false);
    double nearest = Double.POSITIVE_INFINITY;
    List<Support> beams = Stream.concat(field.dropBeams().stream(), field.low().stream()).toList();
    for (Support beam : beams) {
      var along = beam.shape().alongAt(u);
      if (!along.isEmpty() && along.from() > from - TOUCHING && along.from() < nearest) {
        nearest = along.from();
        boolean drop = field.dropBeams().contains(beam);
        var heights = beam.shape().heights();
        found =
            new BeamDatum(nearest, OptionalDouble.of(drop ? heights.to() : heights.from()), drop);
      }
    }
    return found;
  }
}
