package org.underlee.framing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.underlee.geom.Interval;
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

  /** A beam's top and the joist bottom may differ by this: shims, packers, drawing accuracy. */
  private static final double BEARING_GAP = 0.015;

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
      if (!joists.contains(m)
          && Contact.cross(m.box(), joist.box())
          && holds(m, own, tip, end, frame)) {
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
        && gap <= Contact.END_GAP
        && gap >= -INTO_SECTION
        && shared >= SHARE_OF_DEPTH * joist.heights().length();
  }

  /** Bars beside {@code m} that touch it over most of their length: the other plies of a beam. */
  private List<Member> plies(Member m) {
    List<Member> plies = new ArrayList<>();
    for (Member o : level.near(m, tolerance.plyGap())) {
      if (!o.equals(m) && !joists.contains(o) && arePlies(m, o)) {
        plies.add(o);
      }
    }
    return plies;
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
    for (Member m : level.near(joist, BEARING_GAP)) {
      if (!joists.contains(m) && Contact.cross(m.box(), joist.box())) {
        PlanShape shape = shape(m, frame);
        Interval cut = shape.alongAt(own.across().middle());
        boolean bears = Math.abs(shape.heights().to() - own.heights().from()) <= BEARING_GAP;
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
