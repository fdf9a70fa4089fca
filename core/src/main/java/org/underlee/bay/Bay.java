package org.underlee.bay;

import java.util.List;
import java.util.Optional;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;

/**
 * The clear space between two neighbouring joist lines, in the frame of its field (metres).
 *
 * @param id {@code B1} is the first in order of u
 * @param left the line on the low-u side
 * @param stretch stations between the faces of what bounds it
 * @param high what bounds it at the high end, where something does; likewise low
 */
public record Bay(
    String id,
    JoistLine left,
    JoistLine right,
    Interval stretch,
    Optional<Support> high,
    Optional<Support> low,
    List<Block> blocking,
    List<Crossing> crossings) {

  Bay with(String newId, List<Block> blocks, List<Crossing> crossed) {
    return new Bay(newId, left, right, stretch, high, low, blocks, crossed);
  }

  /** The joist face on the low-u side, as u over station. */
  public Linear leftFace() {
    return left.right();
  }

  public Linear rightFace() {
    return right.left();
  }

  public double clearWidthAt(double v) {
    return rightFace().at(v) - leftFace().at(v);
  }

  public double clearWidthHigh() {
    return clearWidthAt(stretch.from());
  }

  public double clearWidthLow() {
    return clearWidthAt(stretch.to());
  }

  public double length() {
    return stretch.length();
  }

  /** Height of the joist bottom, the higher of the two lines: what the bay's space ends at. */
  public double joistBottom(double v) {
    return Math.max(left.bottom().at(v), right.bottom().at(v));
  }

  public double depth() {
    return Math.min(left.depth(), right.depth());
  }
}
