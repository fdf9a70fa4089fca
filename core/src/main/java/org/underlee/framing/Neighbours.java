package org.underlee.framing;

import org.underlee.geom.OrientedBox;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Vec3;

/** Which bars are joists of one field, judged two by two on their boxes. */
record Neighbours(Tolerance tolerance) {
  /** Neighbours may splay by this much (sine of 8°), as in a fanned field. */
  private static final double SPLAY = 0.14;

  /** Pieces that touch run the same way to this (sine of 2°): bow, twist, drawing accuracy. */
  private static final double ALIKE = 0.035;

  /** Tops of one walking level differ by no more than this. */
  private static final double LEVEL_STEP = 0.02;

  /** Less than this side by side is a chance touch: a lap over a beam is longer. */
  private static final double SHORTEST_LAP = 0.08;

  /** The widest saw cut between pieces end to end over a beam. */
  private static final double SPLICE_GAP = 0.02;

  /** Where {@code b} lies as seen from {@code a}: level across it, up, and along it. */
  private record Between(double across, double up, double along) {
    static Between of(OrientedBox a, OrientedBox b) {
      Vec3 between = b.centre().minus(a.centre());
      double along = between.dot(a.axis());
      double sameWay = Math.signum(a.axis().dot(b.axis()));
      Vec3 beside = between.minus(b.axis().times(along * sameWay));
      Vec3 level = beside.horizontal();
      double across = level.minus(a.axis().times(beside.dot(a.axis()))).length();
      return new Between(across, beside.z(), along);
    }

    double overlap(OrientedBox a, OrientedBox b) {
      return (a.length() + b.length()) / 2 - Math.abs(along);
    }

    double gap(OrientedBox a, OrientedBox b) {
      return across - (a.width() + b.width()) / 2;
    }
  }

  boolean areJoistsOfOneField(OrientedBox a, OrientedBox b) {
    double turn = a.axis().cross(b.axis()).length();
    if (turn > SPLAY) {
      return false;
    }
    Between between = Between.of(a, b);
    return (areOfOneDepth(a, b)
            && Math.abs(between.up) <= LEVEL_STEP
            && areSideBySide(a, b, between))
        || (turn <= ALIKE && touchSideBySide(a, b, between));
  }

  /** Pieces of one row that meet end to end. */
  boolean areEndToEnd(OrientedBox a, OrientedBox b) {
    return a.axis().cross(b.axis()).length() <= ALIKE && areEndToEnd(a, b, Between.of(a, b));
  }

  /** Joists of different depth with a joist's gap between them. */
  boolean areSideBySideWithFlushTops(OrientedBox a, OrientedBox b) {
    if (a.axis().cross(b.axis()).length() > SPLAY) {
      return false;
    }
    Between between = Between.of(a, b);
    double tops = between.up + (b.depth() - a.depth()) / 2;
    return Math.abs(tops) <= LEVEL_STEP && areSideBySide(a, b, between);
  }

  private static boolean areOfOneDepth(OrientedBox a, OrientedBox b) {
    return Math.abs(a.depth() - b.depth()) <= LEVEL_STEP;
  }

  private static boolean areSideBySide(OrientedBox a, OrientedBox b, Between between) {
    return between.gap(a, b) <= Field.WIDEST_BAY
        && between.across > Math.min(a.width(), b.width()) / 2
        && between.overlap(a, b) >= Math.min(a.length(), b.length()) / 2;
  }

  /** Plies and sisters, of any depth, and pieces lapped over a beam. */
  private boolean touchSideBySide(OrientedBox a, OrientedBox b, Between between) {
    double sharedHeight = (a.depth() + b.depth()) / 2 - Math.abs(between.up);
    return tolerance.areOneLine(between.gap(a, b))
        && between.overlap(a, b) >= SHORTEST_LAP
        && sharedHeight >= Math.min(a.depth(), b.depth()) / 2;
  }

  private boolean areEndToEnd(OrientedBox a, OrientedBox b, Between between) {
    return areOfOneDepth(a, b)
        && Math.abs(between.up) <= LEVEL_STEP
        && between.across <= tolerance.touch() + tolerance.same()
        && between.overlap(a, b) >= -SPLICE_GAP
        && between.overlap(a, b) <= SHORTEST_LAP;
  }
}
