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
 * Joists are not weakened: what is notched or bored already is said, with the limits for sawn
 * joists. The assembly itself cuts no joist.
 *
 * <p>Method: the drawn joist is cut by planes across it, at even places between a depth off either
 * end, and closer together within a depth of each end. A notch is where it is less deep than usual,
 * with places of the usual depth on both sides: a taper is none. At an end it is a cut of even
 * depth with a whole place further in: a bevel is none. A hole is an opening between wood above and
 * below. What is shorter than the space between two places is missed, and so is how near a hole
 * lies to an edge or to another hole.
 */
public final class NotchedJoists implements Check {
  static final Rule NOTCHED =
      new Rule(
          "joist-notched",
          Level.WARNING,
          "IRC R502.8.1: at most 1/6 of the depth, none in the middle third; 1/4 at an end",
          "A joist is notched deeper than the code allows, or in its middle third.");

  static final Rule BORED =
      new Rule(
          "joist-bored",
          Level.WARNING,
          "IRC R502.8.1: at most 1/3 of the depth",
          "A joist has a hole higher than the code allows.");

  /** A step this shallow is a chamfer, a crown or a saw's slip. */
  private static final double SLIGHT = 0.006;

  /** Corners this near to a station are at it. */
  private static final double SQUARE_END = 1e-6;

  private static final int PLACES = 60;

  /** Places within a depth of an end. */
  private static final int END_PLACES = 16;

  @Override
  public List<Rule> rules() {
    return List.of(NOTCHED, BORED);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      for (JoistLine line : f.field().lines()) {
        line.pieces().forEach(p -> found.addAll(judge(f, line, p)));
      }
    }
    return Answer.found(found);
  }

  private record Cut(double depth, double limit) {
    double past() {
      return depth - limit;
    }

    Cut worse(Cut other) {
      return other.past() > past() ? other : this;
    }
  }

  private static List<Finding> judge(Assembled f, JoistLine line, Ply ply) {
    if (isStraightThrough(f, ply)) {
      return List.of();
    }
    double off = ply.shape().top().at(0) - ply.shape().bottom().at(0);
    Interval s = ply.stretch();
    JoistSection[] inner = sections(f, ply, s.from() + off, s.to() - off, PLACES);
    if (inner.length == 0) {
      return List.of();
    }
    double[] sorted = depths(inner).clone();
    Arrays.sort(sorted);
    double usual = sorted[sorted.length / 2];
    JoistSection.Most most = JoistSection.Most.of(usual);
    Cut notch =
        notch(depths(inner), usual, most)
            .worse(endNotch(sections(f, ply, s.from(), s.from() + off, END_PLACES), usual, most))
            .worse(endNotch(sections(f, ply, s.to(), s.to() - off, END_PLACES), usual, most));
    List<Finding> found = new ArrayList<>();
    notched(f, line, ply, notch).ifPresent(found::add);
    bored(f, line, ply, new Cut(hole(inner), most.hole())).ifPresent(found::add);
    return found;
  }

  /**
   * Whether the drawn piece has corners at its two ends only: between them every edge runs
   * straight, so that nothing is cut out of it and no place needs to be looked at.
   */
  private static boolean isStraightThrough(Assembled f, Ply ply) {
    Mesh mesh = ply.member().element().shape();
    Interval s = ply.stretch();
    for (int i = 0; i < mesh.vertexCount(); i++) {
      double v = f.frame().toLocal(mesh.vertex(i)).y();
      if (Math.min(Math.abs(v - s.from()), Math.abs(v - s.to())) > SQUARE_END) {
        return false;
      }
    }
    return true;
  }

  /** The highest; none of a truss, which is open along most of its length and is no sawn joist. */
  private static double hole(JoistSection[] sections) {
    double[] sorted = Arrays.stream(sections).mapToDouble(JoistSection::hole).sorted().toArray();
    return sorted[sorted.length / 2] > 0 ? 0 : sorted[sorted.length - 1];
  }

  private static double[] depths(JoistSection[] sections) {
    return Arrays.stream(sections).mapToDouble(JoistSection::depth).toArray();
  }

  private static Cut notch(double[] depths, double usual, JoistSection.Most most) {
    Cut worst = new Cut(0, 0);
    for (int i = 0; i < depths.length; i++) {
      double share = (i + 1.0) / (depths.length + 1);
      boolean middle = share > 1.0 / 3 && share < 2.0 / 3;
      Cut here = new Cut(usual - depths[i], middle ? SLIGHT : Math.max(SLIGHT, most.notch()));
      worst = isBetweenWhole(depths, i, usual) ? worst.worse(here) : worst;
    }
    return worst;
  }

  private static boolean isBetweenWhole(double[] depths, int at, double usual) {
    boolean before = Arrays.stream(depths, 0, at).anyMatch(d -> usual - d < SLIGHT);
    boolean after = Arrays.stream(depths, at + 1, depths.length).anyMatch(d -> usual - d < SLIGHT);
    return before && after;
  }

  /**
   * @param sections from the end inward
   */
  private static Cut endNotch(JoistSection[] sections, double usual, JoistSection.Most most) {
    double[] cut =
        Arrays.stream(depths(sections)).takeWhile(d -> usual - d >= SLIGHT).sorted().toArray();
    boolean even = cut.length > 1 && cut[cut.length - 1] - cut[0] < SLIGHT;
    return even && cut.length < sections.length
        ? new Cut(usual - cut[0], most.endNotch())
        : new Cut(0, 0);
  }

  /** The drawn piece at the middles of even parts from one station to another, in that order. */
  private static JoistSection[] sections(Assembled f, Ply ply, double from, double to, int places) {
    Mesh mesh = ply.member().element().shape();
    Vec3[] corners = new Vec3[mesh.vertexCount()];
    for (int i = 0; i < corners.length; i++) {
      corners[i] = f.frame().toLocal(mesh.vertex(i));
    }
    boolean isRoom = ply.stretch().contains(from) && ply.stretch().contains(to);
    JoistSection[] sections = new JoistSection[isRoom ? places : 0];
    for (int i = 0; i < sections.length; i++) {
      sections[i] = JoistSection.at(mesh, corners, from + (to - from) * (i + 0.5) / places);
    }
    return sections;
  }

  private static Optional<Finding> notched(Assembled f, JoistLine line, Ply ply, Cut cut) {
    return finding(f, line, ply, cut, NOTCHED, "a notch is deeper than the %s");
  }

  private static Optional<Finding> bored(Assembled f, JoistLine line, Ply ply, Cut cut) {
    return finding(f, line, ply, cut, BORED, "a hole is higher than the %s");
  }

  private static Optional<Finding> finding(
      Assembled f, JoistLine line, Ply ply, Cut cut, Rule rule, String what) {
    if (cut.past() <= 0) {
      return Optional.empty();
    }
    return Optional.of(
        Finding.measured(
                rule,
                f.place(),
                Words.of(what + " that a sawn joist may have there.", Quantity.length(cut.limit)),
                Measure.lengths(cut.depth, cut.limit),
                "Have the joist looked at by someone licensed to; nothing is fixed to it until"
                    + " then.")
            .about(
                f.subject(
                    line.id(), ply.member().element(), Optional.of(Quantity.length(cut.depth)))));
  }
}
