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

  /** Across all plies, square to the fall, at mid length. */
  public double width() {
    return right.at(stretch.middle()) - left.at(stretch.middle());
  }

  public double top(double v) {
    return bottom.at(v) + depth;
  }

  public double centre(double v) {
    return (left.at(v) + right.at(v)) / 2;
  }
}
