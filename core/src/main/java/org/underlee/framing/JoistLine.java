package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;

/**
 * One joist, or pieces that act as one, in the frame of its field (metres): plies that touch side
 * by side over all or part of their length, pieces lapped over a beam, pieces end to end. Where
 * pieces start and stop the line's width steps; where they are bowed or twisted its faces bend.
 *
 * @param id {@code J1} has the smallest u
 * @param pieces across the line, and those one after the other in order of station
 * @param left straight along the face on the low-u side; no part of the line lies beyond it
 * @param right likewise on the high-u side
 * @param stretch the stations that the line covers
 * @param bottom straight along the underside; no part of the line lies below it
 * @param depth of the deepest piece's section
 * @param why what made it a line
 */
public record JoistLine(
    String id,
    List<Ply> pieces,
    Linear left,
    Linear right,
    Interval stretch,
    Linear bottom,
    double depth,
    String why) {
  /** A piece that stops this near to the line's end is taken to reach it: a hanger's gap, a saw. */
  static final double END_STEP = 0.05;

  public JoistLine {
    pieces = List.copyOf(pieces);
  }

  /**
   * Where two pieces lie side by side and water may run through between them.
   *
   * @param place midway between the two faces, as u over station
   */
  public record Seam(Interval stretch, Linear place) {}

  /** The seams between pieces side by side, in order of u. */
  public List<Seam> seams() {
    List<Seam> seams = new ArrayList<>();
    for (Ply a : pieces) {
      for (Ply b : pieces) {
        Interval shared = a.stretch().meet(b.stretch());
        double v = shared.middle();
        double gap = b.shape().left().at(v) - a.shape().right().at(v);
        if (!shared.isEmpty() && Math.abs(gap) < a.width(v) / 2) {
          double u = a.shape().right().at(v) + gap / 2;
          double slope = (left.slope() + right.slope()) / 2;
          seams.add(new Seam(shared, Linear.through(v, u, slope)));
        }
      }
    }
    seams.sort(
        Comparator.comparingDouble((Seam s) -> s.place.at(stretch.from()))
            .thenComparingDouble(s -> s.stretch.from()));
    return seams;
  }

  /** The same line over a part of its length. */
  JoistLine within(Interval part) {
    List<Ply> left =
        pieces.stream().filter(p -> p.stretch().meet(part).length() > END_STEP).toList();
    return new JoistLine(id, left, this.left, right, part, bottom, depth, why);
  }

  /** The members, in the order of the pieces. */
  public List<Member> plies() {
    return pieces.stream().map(Ply::member).toList();
  }

  /** How many pieces lie side by side where most of them do. */
  public int pliesAbreast() {
    if (pieces.size() == 1) {
      return 1;
    }
    return sections()
        .mapToInt(s -> (int) pieces.stream().filter(p -> covers(p, s.middle())).count())
        .max()
        .orElse(1);
  }

  /** Across all pieces, square to the line, where it is widest. */
  public double width() {
    double slope = (left.slope() + right.slope()) / 2;
    return sections().mapToDouble(s -> rightAt(s.middle()) - leftAt(s.middle())).max().orElse(0)
        / Math.hypot(1, slope);
  }

  /** Whether it is in no file, but assumed. */
  public boolean isAssumed() {
    return pieces.get(0).member().element().isAssumed();
  }

  /** The face on the low-u side at a station. */
  public double leftAt(double v) {
    return least(v, p -> p.shape().left().at(v));
  }

  /** The face on the high-u side at a station. */
  public double rightAt(double v) {
    return most(v, p -> p.shape().right().at(v));
  }

  /** The lowest underside at a station. */
  public double bottomAt(double v) {
    return least(v, p -> p.shape().bottom().at(v));
  }

  /** The highest top at a station. */
  public double top(double v) {
    return most(v, p -> p.shape().top().at(v));
  }

  /** The piece that shows on the low-u side at a station. */
  public Ply leftmost(double v) {
    return pieces.size() == 1
        ? pieces.get(0)
        : at(v).min(Comparator.comparingDouble(p -> p.shape().left().at(v))).orElseThrow();
  }

  /** The piece that shows on the high-u side at a station. */
  public Ply rightmost(double v) {
    return pieces.size() == 1
        ? pieces.get(0)
        : at(v).max(Comparator.comparingDouble(p -> p.shape().right().at(v))).orElseThrow();
  }

  public double centre(double v) {
    return (leftAt(v) + rightAt(v)) / 2;
  }

  /** Stations inside the stretch at which pieces start or stop. */
  public List<Double> steps() {
    TreeSet<Double> steps = new TreeSet<>();
    for (Ply piece : pieces) {
      steps.add(piece.stretch().from());
      steps.add(piece.stretch().to());
    }
    return steps.stream()
        .filter(v -> v > stretch.from() + END_STEP && v < stretch.to() - END_STEP)
        .toList();
  }

  /** The stretches between steps. */
  private java.util.stream.Stream<Interval> sections() {
    List<Double> steps = steps();
    double[] ends =
        DoubleStream.concat(
                DoubleStream.concat(
                    DoubleStream.of(stretch.from()), steps.stream().mapToDouble(v -> v)),
                DoubleStream.of(stretch.to()))
            .toArray();
    return java.util.stream.IntStream.range(0, ends.length - 1)
        .mapToObj(i -> new Interval(ends[i], ends[i + 1]));
  }

  /** Whether it is one piece from end to end whose faces and underside are straight. */
  public boolean isStraight() {
    Ply only = pieces.get(0);
    return pieces.size() == 1
        && only.stretch().contains(stretch)
        && only.shape().left().isStraight()
        && only.shape().right().isStraight()
        && only.shape().bottom().isStraight();
  }

  // nearly all lines are one piece, and layouts ask for their faces many times a bay

  private double least(double v, ToDoubleFunction<Ply> what) {
    return pieces.size() == 1
        ? what.applyAsDouble(pieces.get(0))
        : at(v).mapToDouble(what).min().orElseThrow();
  }

  private double most(double v, ToDoubleFunction<Ply> what) {
    return pieces.size() == 1
        ? what.applyAsDouble(pieces.get(0))
        : at(v).mapToDouble(what).max().orElseThrow();
  }

  /** The pieces at a station; where none is, beyond an end or in a splice, the nearest. */
  private java.util.stream.Stream<Ply> at(double v) {
    if (pieces.size() == 1) {
      return pieces.stream();
    }
    if (pieces.stream().anyMatch(p -> covers(p, v))) {
      return pieces.stream().filter(p -> covers(p, v));
    }
    double nearest = pieces.stream().mapToDouble(p -> away(p, v)).min().orElse(0);
    return pieces.stream().filter(p -> away(p, v) <= nearest + END_STEP);
  }

  private boolean covers(Ply piece, double v) {
    Interval s = piece.stretch();
    return (v >= s.from() || s.from() <= stretch.from() + END_STEP)
        && (v <= s.to() || s.to() >= stretch.to() - END_STEP);
  }

  private static double away(Ply piece, double v) {
    return Math.max(0, Math.max(piece.stretch().from() - v, v - piece.stretch().to()));
  }
}
