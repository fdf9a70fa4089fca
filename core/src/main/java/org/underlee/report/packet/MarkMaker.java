package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.underlee.geom.Vec3;
import org.underlee.report.packet.SeatMarks.Mark;
import org.underlee.report.packet.SeatMarks.Point;

/**
 * Measures marks along one joist face.
 *
 * @param house station of what bounds the high end
 * @param beam what the low end is measured from
 * @param bottom height of the joist's underside over station
 */
record MarkMaker(double house, BeamDatum beam, DoubleUnaryOperator bottom) {
  /** A line is told by its two ends where the wood between is straight to this. */
  private static final double STRAIGHT = 0.0005;

  Mark mark(Point point, Vec3 at) {
    return new Mark(
        point,
        at,
        at.y() - house,
        beam.face() - at.y(),
        at.z() - bottom.applyAsDouble(at.y()),
        at.z() - beam.height().orElse(0));
  }

  /** Where the underside leaves the straight line between two marks. */
  List<Mark> bends(Vec3 from, Vec3 to, double[] turns) {
    List<Mark> found = new ArrayList<>();
    double high = bottom.applyAsDouble(from.y());
    double low = bottom.applyAsDouble(to.y());
    for (double v : turns) {
      double share = (v - from.y()) / (to.y() - from.y());
      double straight = high + share * (low - high);
      if (share > 0 && share < 1 && Math.abs(bottom.applyAsDouble(v) - straight) > STRAIGHT) {
        found.add(mark(Point.BEND, between(from, to, share)));
      }
    }
    return found;
  }

  static Vec3 between(Vec3 from, Vec3 to, double share) {
    return from.plus(to.minus(from).times(share));
  }
}
