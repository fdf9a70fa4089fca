package org.underlee.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Ply;
import org.underlee.geom.Interval;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Joists are not weakened: what is notched already is said, with the limits for notches in sawn
 * joists. The assembly itself cuts no joist.
 *
 * <p>Method: the depth of the drawn joist at places along it. A notch is where it is less than
 * usual, with places of the usual depth on both sides: a taper or a bevelled end is none. Cuts
 * within a depth of the ends, and notches shorter than the space between two places, are missed.
 */
public final class NotchedJoists implements Check {
  static final Rule NOTCHED =
      new Rule(
          "joist-notched",
          Level.WARNING,
          "IRC R502.8.1: at most 1/6 of the depth, none in the middle third",
          "A joist is notched deeper than the code allows, or in its middle third.");

  private static final double MOST = 1.0 / 6;

  /** A step this shallow is a chamfer, a crown or a saw's slip. */
  private static final double SLIGHT = 0.006;

  private static final int PLACES = 60;

  @Override
  public List<Rule> rules() {
    return List.of(NOTCHED);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      for (JoistLine line : f.field().lines()) {
        line.pieces().forEach(p -> judge(f, line, p).ifPresent(found::add));
      }
    }
    return Answer.found(found);
  }

  private record Notch(double depth, double limit) {
    double past() {
      return depth - limit;
    }
  }

  private static Optional<Finding> judge(Assembled f, JoistLine line, Ply ply) {
    double[] depths = depths(f, ply);
    if (depths.length == 0) {
      return Optional.empty();
    }
    double[] sorted = depths.clone();
    Arrays.sort(sorted);
    double usual = sorted[sorted.length / 2];
    Notch worst = new Notch(0, 0);
    for (int i = 0; i < depths.length; i++) {
      double share = (i + 1.0) / (depths.length + 1);
      boolean middle = share > 1.0 / 3 && share < 2.0 / 3;
      Notch here = new Notch(usual - depths[i], middle ? SLIGHT : Math.max(SLIGHT, usual * MOST));
      if (here.past() > worst.past() && isBetweenWhole(depths, i, usual)) {
        worst = here;
      }
    }
    return worst.past() > 0 ? Optional.of(finding(f, line, ply, worst)) : Optional.empty();
  }

  private static boolean isBetweenWhole(double[] depths, int at, double usual) {
    boolean before = Arrays.stream(depths, 0, at).anyMatch(d -> usual - d < SLIGHT);
    boolean after = Arrays.stream(depths, at + 1, depths.length).anyMatch(d -> usual - d < SLIGHT);
    return before && after;
  }

  /** Heights of the drawn piece at places from a depth off one end to a depth off the other. */
  private static double[] depths(Assembled f, Ply ply) {
    Vec3[] corners = new Vec3[ply.member().element().shape().vertexCount()];
    for (int i = 0; i < corners.length; i++) {
      corners[i] = f.frame().toLocal(ply.member().element().shape().vertex(i));
    }
    double off = ply.shape().top().at(0) - ply.shape().bottom().at(0);
    Interval s = new Interval(ply.stretch().from() + off, ply.stretch().to() - off);
    double[] depths = new double[s.isEmpty() ? 0 : PLACES];
    for (int i = 0; i < depths.length; i++) {
      double v = s.from() + s.length() * (i + 0.5) / PLACES;
      depths[i] = section(ply.member().element().shape(), corners, v).length();
    }
    return depths;
  }

  private static Interval section(Mesh mesh, Vec3[] corners, double v) {
    Interval heights = new Interval(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        Vec3 a = corners[mesh.corner(t, k)];
        Vec3 b = corners[mesh.corner(t, (k + 1) % 3)];
        if ((a.y() - v) * (b.y() - v) < 0) {
          double z = a.z() + (b.z() - a.z()) * (v - a.y()) / (b.y() - a.y());
          heights = new Interval(Math.min(heights.from(), z), Math.max(heights.to(), z));
        }
      }
    }
    return heights;
  }

  private static Finding finding(Assembled f, JoistLine line, Ply ply, Notch notch) {
    return Finding.measured(
            NOTCHED,
            f.place(),
            Words.of(
                "a notch is deeper than the %s that a sawn joist may have there.",
                Quantity.length(notch.limit)),
            Measure.lengths(notch.depth, notch.limit),
            "Have the joist looked at by someone licensed to; nothing is fixed to it until then.")
        .about(
            f.subject(
                line.id(), ply.member().element(), Optional.of(Quantity.length(notch.depth))));
  }
}
