package org.underlee.framing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.underlee.geom.Interval;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Transform;

/** Finds what joists end on and what they lie on, in a frame whose y runs along them. */
record Bounds(MemberIndex level, Set<Member> joists, Tolerance tolerance) {
  /**
   * A joist may run this far into the outline of what holds it, as into the web of a steel beam.
   */
  private static final double INTO_SECTION = 0.15;

  /** A bar holds a joist end when it covers this share of the joist's depth. */
  private static final double SHARE_OF_DEPTH = 0.25;

  /** A rim turns from square to the joists by no more than this (sine of 60°). */
  private static final double MOST_SKEW = 0.87;

  /** Up to here (sine of 20°) a bar lies square to the joists. */
  private static final double LEAST_SLANT = 0.342;

  /** A slanted bar holds a joist when it covers this share of its width. */
  private static final double COVERED = 0.8;

  /** Pieces of one rim share this much of their height. */
  private static final double SAME_HEIGHT = 0.9;

  /**
   * Bars that hold one end of a joist, with the plies that touch them.
   *
   * @param end −1 for the end with the smaller station, +1 for the other
   */
  Set<Member> at(Member joist, int end, Transform frame) {
    PlanShape own = shape(joist, frame);
    double tip = end < 0 ? own.along().from() : own.along().to();
    Set<Member> found = new LinkedHashSet<>();
    for (Member m : level.near(joist, Contact.END_GAP)) {
      if (!joists.contains(m) && Contact.cross(m, joist) && holds(m, own, tip, end, frame)) {
        found.add(m);
        found.addAll(plies(m));
      }
    }
    return found;
  }

  private boolean holds(Member m, PlanShape joist, double tip, int end, Transform frame) {
    PlanShape shape = shape(m, frame);
    Interval cut = shape.alongAt(joist.across().middle());
    double gap = end < 0 ? tip - cut.to() : cut.from() - tip;
    double shared = shape.heights().meet(joist.heights()).length();
    return !cut.isEmpty()
        && (isSquare(m, frame) || coversWidthOf(joist, shape))
        && gap <= Contact.END_GAP
        && gap >= -INTO_SECTION
        && shared >= SHARE_OF_DEPTH * joist.heights().length();
  }

  private static boolean isSquare(Member m, Transform frame) {
    return Math.abs(m.box().axis().dot(frame.y())) <= LEAST_SLANT;
  }

  /** A brace at a joist's side has its tip in the joist; a hip or a skewed rim passes it by. */
  private static boolean coversWidthOf(PlanShape joist, PlanShape bar) {
    double shared = bar.across().meet(joist.across()).length();
    return shared >= COVERED * joist.across().length();
  }

  /** Bars beside {@code m} that touch it over most of their length: the other plies of a beam. */
  List<Member> plies(Member m) {
    List<Member> plies = new ArrayList<>();
    for (Member o : level.near(m, tolerance.plyGap())) {
      if (!o.equals(m) && !joists.contains(o) && arePlies(m, o)) {
        plies.add(o);
      }
    }
    return plies;
  }

  /**
   * Bars that go on where one of the given ones ends, within the joists' stretch across: pieces of
   * a rim that lie between two joists and hold none.
   */
  Set<Member> continuing(Set<Member> bounds, Interval across, Transform frame) {
    Set<Member> found = new LinkedHashSet<>(bounds);
    List<Member> open = new ArrayList<>(bounds);
    while (!open.isEmpty()) {
      Member m = open.remove(open.size() - 1);
      for (Member o : level.near(m, Contact.END_GAP)) {
        if (!joists.contains(o) && !found.contains(o) && goesOn(m, o, across, frame)) {
          found.add(o);
          open.add(o);
        }
      }
    }
    return found;
  }

  private static boolean goesOn(Member m, Member o, Interval across, Transform frame) {
    PlanShape a = shape(m, frame);
    PlanShape b = shape(o, frame);
    double shared = a.heights().meet(b.heights()).length();
    return Math.abs(o.box().axis().dot(frame.y())) <= MOST_SKEW
        && across.contains(b.across().middle())
        && shared >= SAME_HEIGHT * Math.max(a.heights().length(), b.heights().length())
        && endsMeet(m.box(), o.box());
  }

  private static boolean endsMeet(OrientedBox a, OrientedBox b) {
    double reach = (a.width() + b.width()) / 2 + Contact.END_GAP;
    for (int i = -1; i <= 1; i += 2) {
      for (int j = -1; j <= 1; j += 2) {
        if (a.end(i).distance(b.end(j)) <= reach) {
          return true;
        }
      }
    }
    return false;
  }

  boolean hasPlies(Member m) {
    return !plies(m).isEmpty();
  }

  private boolean arePlies(Member a, Member b) {
    var between = b.box().centre().minus(a.box().centre());
    double gap = Math.abs(between.dot(a.box().side())) - (a.box().width() + b.box().width()) / 2;
    return a.box().axis().cross(b.box().axis()).length() <= tolerance.parallelRadians()
        && tolerance.areOneLine(gap)
        && Math.abs(a.box().depth() - b.box().depth()) <= 0.02
        && Math.abs(between.z()) <= 0.02
        && Math.abs(between.dot(a.box().axis())) < a.box().length() / 2;
  }

  /** Beams that a joist lies on. */
  Set<Member> below(Member joist, Transform frame) {
    PlanShape own = shape(joist, frame);
    Set<Member> found = new LinkedHashSet<>();
    for (Member m : level.near(joist, Contact.BEARING_GAP)) {
      if (!joists.contains(m) && Contact.cross(m, joist)) {
        PlanShape shape = shape(m, frame);
        Interval cut = shape.alongAt(own.across().middle());
        boolean bears =
            Math.abs(shape.heights().to() - own.heights().from()) <= Contact.BEARING_GAP;
        if (bears && !cut.meet(own.along()).isEmpty()) {
          found.add(m);
        }
      }
    }
    return found;
  }

  private static PlanShape shape(Member m, Transform frame) {
    return PlanShape.of(m.element().shape(), frame);
  }
}
