package org.underlee.takeoff;

import java.util.BitSet;

/** What numbers of whole sticks can cost: bounds are raised to the next such sum. */
final class Sums {
  private static final int MOST_SUMS = 1_000_000;

  /** Less than this part of a step is rounding. */
  private static final double ROUNDING = 1e-6;

  private final long step;
  private final int[] each;
  private final BitSet reached = new BitSet();
  private int known;

  Sums(CuttingOrder order) {
    this.step = order.costStep();
    this.each = order.costs().mapToInt(c -> (int) Math.min(MOST_SUMS, c / step)).toArray();
    reached.set(0);
  }

  /**
   * The least sum that is at least this much.
   *
   * @param cost a lower bound, maybe not whole
   */
  long atLeast(double cost) {
    long least = Math.max(0, (long) Math.ceil(cost / step - ROUNDING));
    if (least > MOST_SUMS) {
      return least * step;
    }
    int sum = (int) least;
    know(sum);
    while (!reached.get(sum)) {
      know(++sum);
    }
    return sum * step;
  }

  private void know(int most) {
    for (; known <= most; known++) {
      for (int cost : each) {
        if (cost <= known && reached.get(known - cost)) {
          reached.set(known);
        }
      }
    }
  }
}
