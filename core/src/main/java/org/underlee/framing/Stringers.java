package org.underlee.framing;

import org.underlee.geom.OrientedBox;
import org.underlee.geom.Vec3;

/** Tells the members that carry a flight of stairs up to a deck. */
final class Stringers {
  /** A stringer's upper end lies this near to the member at the deck's edge. */
  static final double REACH = 0.15;

  /** The upper end lies at most this far below the joist tops: a riser or two. */
  private static final double BELOW_TOP = 0.6;

  private static final double ABOVE_TOP = 0.15;

  /** Stairs rise between these (sines of 15° and 60°). */
  private static final double FLATTEST = 0.2588;

  private static final double STEEPEST = 0.8660;

  private static final double SHORTEST = 0.5;

  private Stringers() {}

  static boolean climbsTo(Member edge, Member m, double joistTop) {
    OrientedBox box = m.box();
    double rise = Math.abs(box.axis().z());
    Vec3 head = box.end(box.axis().z() > 0 ? 1 : -1);
    return rise >= FLATTEST
        && rise <= STEEPEST
        && box.length() >= SHORTEST
        && head.z() >= joistTop - BELOW_TOP
        && head.z() <= joistTop + ABOVE_TOP
        && Contact.isAt(head, edge.box(), REACH + box.depth() / 2);
  }
}
