package org.underlee.drainage;

/** An outline's edge, which it enters or leaves the outline at, as a {@link PlanSweep} meets it. */
final class SweepEdge {
  final int shape;
  final double u0;
  final double u1;
  private final double v0;
  private final double v1;
  private final boolean upright;

  /** Its v at the slab's left and right end and, between them, where edges are put in order. */
  double left;

  double right;
  double middle;

  /** Among the edges of the whole plan: of two at one place the first comes first. */
  private int order;

  SweepEdge(int shape, double u0, double v0, double u1, double v1) {
    this.shape = shape;
    this.u0 = u0;
    this.v0 = v0;
    this.u1 = u1;
    this.v1 = v1;
    this.upright = u1 - u0 < WaterRules.SAME_PLAN;
  }

  /** Given once, by the sweep. */
  void number(int ownOrder) {
    this.order = ownOrder;
  }

  /**
   * The edge for a stretch of the sweep, which stands it between stops: one that other stretches
   * meet, too, is copied.
   */
  SweepEdge within(double from, double to) {
    if (u0 >= from && u1 <= to) {
      return this;
    }
    SweepEdge own = new SweepEdge(shape, u0, v0, u1, v1);
    own.order = order;
    return own;
  }

  static int compare(SweepEdge a, SweepEdge b) {
    int lower = Double.compare(a.middle, b.middle);
    return lower == 0 ? Integer.compare(a.order, b.order) : lower;
  }

  private double at(double u) {
    if (v0 == v1) {
      return v0;
    }
    return upright ? (v0 + v1) / 2 : v0 + (v1 - v0) * (u - u0) / (u1 - u0);
  }

  /** Stands the edge between two stops. */
  void between(double from, double to) {
    left = at(from);
    right = at(to);
    middle = at((from + to) / 2);
  }
}
