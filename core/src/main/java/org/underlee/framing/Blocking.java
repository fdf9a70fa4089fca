package org.underlee.framing;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.geom.Interval;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Transform;

/**
 * Finds the short pieces set between two joist lines and tells what they are: blocking, which lies
 * level; bridging, whose struts rise from one joist's bottom to the next one's top; and packers,
 * which hold a pair of joists a little apart.
 */
final class Blocking {
  /** A block fills the clear width to within this at each side. */
  private static final double FIT = 0.012;

  /** A strut's square or bevelled end stops short of the joist, or is drawn into it, by this. */
  private static final double STRUT_FIT = 0.045;

  /** A block shares at least this much height with the joists. */
  private static final double SHARED_HEIGHT = 0.01;

  /** A strut rises over at least this share of the joists' depth. */
  private static final double STRUT_RISE = 0.5;

  /** A strut rises more steeply than this (sine of 6°), and is no post (sine of 80°). */
  private static final double INCLINED = 0.105;

  private static final double UPRIGHT = 0.9848;

  /** A strut is at least this many times as long as thick. */
  private static final double SLENDER = 2.5;

  /** Joists no further apart than this are a pair, and what fills the gap is a packer. */
  static final double PAIR = 0.12;

  private final List<JoistLine> lines;
  private final Transform frame;
  private final Map<Member, PlanShape> shapes = new HashMap<>();

  private Blocking(List<JoistLine> lines, Transform frame) {
    this.lines = lines;
    this.frame = frame;
  }

  static List<Member> between(
      List<JoistLine> lines, MemberIndex members, Set<Member> joists, Transform frame) {
    Blocking blocking = new Blocking(lines, frame);
    Set<Member> found = new LinkedHashSet<>();
    for (int i = 0; i + 1 < lines.size(); i++) {
      Set<Member> asked = new HashSet<>();
      for (Ply ply : lines.get(i).pieces()) {
        for (Member m : members.near(ply.member(), STRUT_FIT)) {
          if (!joists.contains(m)
              && !found.contains(m)
              && asked.add(m)
              && sharesHeight(m.box(), ply.member().box())
              && blocking.fitsAfter(i, m)) {
            found.add(m);
          }
        }
      }
    }
    return List.copyOf(found);
  }

  /** What a piece between two lines is. */
  static Role roleOf(Member piece, Field field) {
    if (isStrut(piece.box())) {
      return Role.BRIDGING;
    }
    PlanShape shape = field.shapeOf(piece);
    return shape.across().length() <= PAIR ? Role.PACKER : Role.BLOCKING;
  }

  static boolean isStrut(OrientedBox b) {
    double rise = Math.abs(b.axis().z());
    return rise >= INCLINED
        && rise < UPRIGHT
        && b.length() >= SLENDER * Math.max(b.width(), b.depth());
  }

  private static boolean sharesHeight(OrientedBox a, OrientedBox b) {
    return Math.min(a.top(), b.top()) - Math.max(a.bottom(), b.bottom()) >= SHARED_HEIGHT;
  }

  private boolean fitsAfter(int i, Member m) {
    PlanShape shape = shapes.computeIfAbsent(m, own -> PlanShape.of(own.element().shape(), frame));
    double v = shape.along().middle();
    JoistLine left = lines.get(i);
    if (!left.stretch().contains(v)) {
      return false;
    }
    Optional<JoistLine> right =
        lines.subList(i + 1, lines.size()).stream()
            .filter(l -> l.stretch().contains(v))
            .findFirst();
    return right.isPresent()
        && (isStrut(m.box())
            ? bridges(shape, v, left, right.get())
            : fills(shape, v, left, right.get()));
  }

  private static boolean fills(PlanShape shape, double v, JoistLine left, JoistLine right) {
    Interval own = shape.acrossAt(v);
    Interval joist = new Interval(left.bottomAt(v), left.top(v));
    return Math.abs(own.from() - left.rightAt(v)) <= FIT
        && Math.abs(own.to() - right.leftAt(v)) <= FIT
        && shape.heights().meet(joist).length() >= SHARED_HEIGHT
        && shape.heights().to() <= joist.to() + SHARED_HEIGHT;
  }

  private static boolean bridges(PlanShape shape, double v, JoistLine left, JoistLine right) {
    Interval own = shape.across();
    Interval joist = new Interval(left.bottomAt(v), left.top(v));
    return Math.abs(own.from() - left.rightAt(v)) <= STRUT_FIT
        && Math.abs(own.to() - right.leftAt(v)) <= STRUT_FIT
        && shape.heights().meet(joist).length() >= STRUT_RISE * joist.length()
        && shape.heights().to() <= joist.to() + STRUT_FIT
        && shape.heights().from() >= joist.from() - STRUT_FIT;
  }
}
