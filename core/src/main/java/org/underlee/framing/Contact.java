package org.underlee.framing;

import java.util.List;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Vec3;

/** Questions about which bars meet, answered on their boxes. */
final class Contact {
  /** The gap that a hanger or a sawn end leaves between a joist and what holds it. */
  static final double END_GAP = 0.025;

  /** A beam's top and what lies on it may differ by this: shims, packers, drawing accuracy. */
  static final double BEARING_GAP = 0.015;

  /** Bars cross when they are at least this far from parallel (sine of 30°): a hip lies at 45°. */
  private static final double CROSSING = 0.5;

  /** A bar that ends on another runs into it by less than this share past the other's middle. */
  private static final double INTO = 0.25;

  private Contact() {}

  /** Whether bars cross; a bent one crosses what it meets. */
  static boolean cross(Member a, Member b) {
    return a.isBent() || b.isBent() || cross(a.box(), b.box());
  }

  static boolean cross(OrientedBox a, OrientedBox b) {
    return a.axis().cross(b.axis()).length() >= CROSSING;
  }

  /** Whether a place lies inside a box or within {@code reach} of it. */
  static boolean isAt(Vec3 p, OrientedBox box, double reach) {
    Vec3 d = p.minus(box.centre());
    return Math.abs(d.dot(box.axis())) <= box.length() / 2 + reach
        && Math.abs(d.dot(box.side())) <= box.width() / 2 + reach
        && Math.abs(d.dot(box.up())) <= box.depth() / 2 + reach;
  }

  /** Whether one end of {@code m} bears on the near side, not the tip, of a crossing bar. */
  static boolean endsOn(Member m, int end, Member other) {
    OrientedBox box = other.box();
    Vec3 d = m.box().end(end).minus(box.centre());
    return cross(m.box(), box)
        && Math.abs(d.dot(box.axis())) <= box.length() / 2
        && isAt(m.box().end(end), box, END_GAP)
        && d.dot(m.box().axis()) * end <= INTO * box.width();
  }

  /** Whether {@code m} lies across the top of another level bar. */
  static boolean liesOn(Member m, Member other) {
    OrientedBox a = m.box();
    OrientedBox b = other.box();
    if (!cross(a, b) || Math.abs(a.bottom() - b.top()) > BEARING_GAP) {
      return false;
    }
    // where the two axes meet in plan
    Vec3 between = b.centre().minus(a.centre()).horizontal();
    double turn = a.axis().cross(b.axis()).z();
    double alongA = between.cross(b.axis()).z() / turn;
    double alongB = between.cross(a.axis()).z() / turn;
    return Math.abs(alongA) <= a.length() / 2 + b.width() / 2
        && Math.abs(alongB) <= b.length() / 2 + a.width() / 2;
  }

  /** Whether both ends of {@code m} bear on bars of the index. */
  static boolean heldAtBothEnds(Member m, MemberIndex bars, Tolerance tolerance) {
    List<Member> near = bars.near(m, END_GAP + tolerance.touch());
    return near.stream().anyMatch(o -> !o.equals(m) && endsOn(m, -1, o))
        && near.stream().anyMatch(o -> !o.equals(m) && endsOn(m, 1, o));
  }

  /** How many ends of bars in the index bear on {@code m}. */
  static int holdsEndsOf(Member m, MemberIndex bars, Tolerance tolerance) {
    int ends = 0;
    for (Member o : bars.near(m, END_GAP + tolerance.touch())) {
      ends += !o.equals(m) && (endsOn(o, -1, m) || endsOn(o, 1, m)) ? 1 : 0;
    }
    return ends;
  }

  /** How many ends of bars bear on one side of {@code m}: −1 or +1 of its own side direction. */
  static int holdsEndsOf(Member m, MemberIndex bars, int side) {
    int ends = 0;
    for (Member o : bars.near(m, END_GAP)) {
      double beside = o.box().centre().minus(m.box().centre()).dot(m.box().side()) * side;
      ends += beside > 0 && !o.equals(m) && (endsOn(o, -1, m) || endsOn(o, 1, m)) ? 1 : 0;
    }
    return ends;
  }
}
