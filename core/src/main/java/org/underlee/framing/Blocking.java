package org.underlee.framing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Transform;

/** Finds the short pieces set between two joist lines. */
final class Blocking {
  /** A block fills the clear width to within this at each side. */
  private static final double FIT = 0.012;

  /** A block shares at least this much height with the joists. */
  private static final double SHARED_HEIGHT = 0.01;

  private Blocking() {}

  static List<Member> between(
      List<JoistLine> lines, MemberIndex members, Set<Member> joists, Transform frame) {
    Set<Member> found = new LinkedHashSet<>();
    for (JoistLine line : lines) {
      for (Member ply : line.plies()) {
        for (Member m : members.near(ply, FIT)) {
          if (!joists.contains(m) && !found.contains(m) && fits(m, lines, frame)) {
            found.add(m);
          }
        }
      }
    }
    return List.copyOf(found);
  }

  private static boolean fits(Member m, List<JoistLine> lines, Transform frame) {
    PlanShape shape = PlanShape.of(m.element().shape(), frame);
    double v = shape.along().middle();
    List<JoistLine> here = new ArrayList<>();
    for (JoistLine line : lines) {
      if (line.stretch().contains(v)) {
        here.add(line);
      }
    }
    for (int i = 0; i + 1 < here.size(); i++) {
      if (fitsBetween(shape, v, here.get(i), here.get(i + 1))) {
        return true;
      }
    }
    return false;
  }

  private static boolean fitsBetween(PlanShape shape, double v, JoistLine left, JoistLine right) {
    Interval gap = new Interval(left.right().at(v), right.left().at(v));
    Interval own = shape.acrossAt(v);
    Interval joist = new Interval(left.bottom().at(v), left.top(v));
    return Math.abs(own.from() - gap.from()) <= FIT
        && Math.abs(own.to() - gap.to()) <= FIT
        && shape.heights().meet(joist).length() >= SHARED_HEIGHT
        && shape.heights().to() <= joist.to() + SHARED_HEIGHT;
  }
}
