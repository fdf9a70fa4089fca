package org.underlee.bay;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Ply;
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
 * @param bridging crossed struts between the two lines
 */
public record Bay(
    String id,
    JoistLine left,
    JoistLine right,
    Interval stretch,
    Optional<Support> high,
    Optional<Support> low,
    List<Block> blocking,
    List<Block> bridging,
    List<Crossing> crossings) {
  /** Shorter runs leave no room between the end gaps of what is hung. */
  public static final double SHORTEST_RUN = 0.3;

  /** On either side of a place where the width steps. */
  private static final double BESIDE = 1e-6;

  /** Widths nearer to the straight line past them than this say nothing: results are to 0.1 mm. */
  private static final double STRAIGHT = 0.0001;

  /**
   * The clear width at a place; where it steps, two have the same place.
   *
   * @param at from the high end of the bay
   */
  public record Width(double at, double width) {}

  /**
   * A stretch with one usable depth: from the joist bottoms up to the joist tops, or to the
   * underside of what stands in the bay.
   *
   * @param from from the high end of the bay
   */
  public record Depth(double from, double to, double depth) {}

  Bay with(String newId, List<Block> blocks, List<Block> bridges, List<Crossing> crossed) {
    return new Bay(newId, left, right, stretch, high, low, blocks, bridges, crossed);
  }

  /**
   * The straight line along the joist face on the low-u side that no framing lies beyond, as u over
   * station: what runs straight through the bay fits between this and {@link #rightFace()}.
   */
  public Linear leftFace() {
    double slope = left.right().slope();
    double most = Double.NEGATIVE_INFINITY;
    for (double v : bends()) {
      most = Math.max(most, left.rightAt(v) - slope * v);
    }
    return new Linear(most, slope);
  }

  public Linear rightFace() {
    double slope = right.left().slope();
    double least = Double.POSITIVE_INFINITY;
    for (double v : bends()) {
      least = Math.min(least, right.leftAt(v) - slope * v);
    }
    return new Linear(least, slope);
  }

  public double clearWidthAt(double v) {
    return right.leftAt(v) - left.rightAt(v);
  }

  public double clearWidthHigh() {
    return clearWidthAt(stretch.from());
  }

  public double clearWidthLow() {
    return clearWidthAt(stretch.to());
  }

  /** Where it is narrowest. */
  public double clearWidthNarrowest() {
    return clearWidths().stream().mapToDouble(Width::width).min().orElse(clearWidthHigh());
  }

  /** The clear width from the high end to the low end: straight from each place to the next. */
  public List<Width> clearWidths() {
    List<Width> all =
        Arrays.stream(bends())
            .sorted()
            .mapToObj(v -> new Width(v - stretch.from(), clearWidthAt(v)))
            .toList();
    return Widths.simplified(all, STRAIGHT);
  }

  /** Between the straight faces: what is left for something that runs straight through. */
  public double straightWidthAt(double v) {
    return rightFace().at(v) - leftFace().at(v);
  }

  /** How far the straight face stands off the joists on the low-u side, where it is furthest. */
  public double standOffLeft() {
    Linear face = leftFace();
    return Arrays.stream(bends()).map(v -> face.at(v) - left.rightAt(v)).max().orElse(0);
  }

  public double standOffRight() {
    Linear face = rightFace();
    return Arrays.stream(bends()).map(v -> right.leftAt(v) - face.at(v)).max().orElse(0);
  }

  /** Stations from one to another at which joist tops or bottoms may turn, both included. */
  public double[] turns(double from, double to) {
    return DoubleStream.concat(
            DoubleStream.of(from, to), Arrays.stream(bends()).filter(v -> v > from && v < to))
        .sorted()
        .toArray();
  }

  public double length() {
    return stretch.length();
  }

  /** Height of the joist bottom, the higher of the two faces: what the bay's space ends at. */
  public double joistBottom(double v) {
    return Math.max(
        left.rightmost(v).shape().bottom().at(v), right.leftmost(v).shape().bottom().at(v));
  }

  /** Height of the joist top, the lower of the two lines. */
  public double joistTop(double v) {
    return Math.min(left.top(v), right.top(v));
  }

  /** From joist bottom to joist top where that is least. */
  public double depth() {
    return Arrays.stream(bends()).map(v -> joistTop(v) - joistBottom(v)).min().orElse(0);
  }

  /** Usable depth from the high end to the low end, stretch by stretch. */
  public List<Depth> usableDepths() {
    return Widths.depths(this);
  }

  /** Stations at which faces or undersides bend, and both sides of each step, and the two ends. */
  private double[] bends() {
    if (left.isStraight() && right.isStraight()) {
      return new double[] {stretch.from(), stretch.to()};
    }
    return DoubleStream.concat(
            DoubleStream.of(stretch.from(), stretch.to()),
            DoubleStream.concat(bends(left), bends(right)))
        .toArray();
  }

  private DoubleStream bends(JoistLine line) {
    DoubleStream steps =
        line.steps().stream()
            .filter(v -> v > stretch.from() + BESIDE && v < stretch.to() - BESIDE)
            .flatMapToDouble(v -> DoubleStream.of(v - BESIDE, v + BESIDE));
    return DoubleStream.concat(
        steps, line.pieces().stream().flatMapToDouble(p -> DoubleStream.of(bends(p))));
  }

  private double[] bends(Ply piece) {
    return java.util.stream.Stream.of(
            piece.shape().left(), piece.shape().right(), piece.shape().bottom())
        .flatMapToDouble(f -> DoubleStream.of(f.bends(stretch)))
        .toArray();
  }
}
