package org.underlee.geom;

import org.locationtech.jts.geom.Coordinate;

/**
 * A place that JTS works on, which counts how often JTS compares it.
 *
 * <p>Ear clipping in JTS 1.20 goes round for ever where all corners that are left are convex and
 * none of them is an ear, to which a ring that runs over itself can come; nothing in its interface
 * ends it.
 */
final class Compared extends Coordinate {
  private static final long serialVersionUID = 1;

  /** What places of one region share. Not for several threads at once. */
  static final class Budget {
    /** A ring that does not run over itself needs a few comparisons for each pair of corners. */
    private static final long FOR_EACH_PAIR = 32;

    private static final long LEAST = 1_000_000;

    private long left;

    Budget(long corners) {
      this.left = LEAST + FOR_EACH_PAIR * corners * corners;
    }

    private void spend() {
      if (--left < 0) {
        throw new IllegalArgumentException("its outline runs over itself");
      }
    }
  }

  private final transient Budget budget;

  Compared(double x, double y, Budget budget) {
    super(x, y);
    this.budget = budget;
  }

  @Override
  public Compared copy() {
    return new Compared(x, y, budget);
  }

  @Override
  public boolean equals2D(Coordinate other) {
    budget.spend();
    return super.equals2D(other);
  }
}
