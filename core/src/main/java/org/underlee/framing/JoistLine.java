package org.underlee.framing;

import java.util.List;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;

/**
 * One joist, or plies that touch and act as one, in the frame of its field (metres).
 *
 * @param id {@code J1} has the smallest u
 * @param plies in order of u
 * @param left the face on the low-u side, as u over station v
 * @param right the face on the high-u side
 * @param stretch the stations that the line covers
 * @param bottom height of the underside over station
 * @param why what made it a line
 */
public record JoistLine(
    String id,
    List<Member> plies,
    Linear left,
    Linear right,
    Interval stretch,
    Linear bottom,
    double depth,
    String why) {
  public JoistLine {
    plies = List.copyOf(plies);
  }

  /** Across all plies, square to the line, at mid length. */
  public double width() {
    double v = stretch.middle();
    double slope = (left.slope() + right.slope()) / 2;
    return (right.at(v) - left.at(v)) / Math.hypot(1, slope);
  }

  /** Whether it is in no file, but assumed. */
  public boolean isAssumed() {
    return plies.get(0).element().isAssumed();
  }

  public double top(double v) {
    return bottom.at(v) + depth;
  }

  public double centre(double v) {
    return (left.at(v) + right.at(v)) / 2;
  }
}
