package org.underlee.takeoff;

import java.util.Arrays;

/** A cutting order in whole numbers, so that nothing in the search is decided by rounding. */
final class CuttingOrder {
  private static final long MOST_SUMS = 1_000_000;

  private final long[] needs;
  private final int[] wanted;
  private final long[] rooms;
  private final long[] costs;

  /**
   * An order.
   *
   * @param needs what each size takes of a stick, one cut included, micrometres
   * @param wanted how many of each size
   * @param rooms what a stick of each offer has, one cut included, micrometres
   * @param costs of a stick of each offer
   */
  CuttingOrder(long[] needs, int[] wanted, long[] rooms, long[] costs) {
    this.needs = needs.clone();
    this.wanted = wanted.clone();
    this.rooms = rooms.clone();
    this.costs = costs.clone();
  }

  long[] needs() {
    return needs.clone();
  }

  long need(int size) {
    return needs[size];
  }

  int[] wanted() {
    return wanted.clone();
  }

  long greatestRoom() {
    return Arrays.stream(rooms).max().orElseThrow();
  }

  int offers() {
    return rooms.length;
  }

  long room(int offer) {
    return rooms[offer];
  }

  long cost(int offer) {
    return costs[offer];
  }

  long greatestCost() {
    return Arrays.stream(costs).max().orElseThrow();
  }

  long leastCost() {
    return Arrays.stream(costs).min().orElseThrow();
  }

  /** The offer of least cost that has at least this much room. */
  int cheapestWith(long room) {
    int best = -1;
    for (int offer = 0; offer < rooms.length; offer++) {
      if (rooms[offer] >= room && (best < 0 || costs[offer] < costs[best])) {
        best = offer;
      }
    }
    return best;
  }

  /**
   * The least sum of whole sticks that costs at least this much.
   *
   * @param cost a lower bound, maybe not whole
   */
  long atLeast(double cost) {
    long unit = Arrays.stream(costs).reduce(0, CuttingOrder::commonDivisor);
    long least = (long) Math.ceil(cost / unit - 1e-6);
    long most = least + greatestCost() / unit;
    if (most > MOST_SUMS) {
      return least * unit;
    }
    boolean[] reached = new boolean[(int) most + 1];
    reached[0] = true;
    for (int sum = 0; sum <= most; sum++) {
      for (long each : costs) {
        long before = sum - each / unit;
        reached[sum] |= before >= 0 && reached[(int) before];
      }
      if (reached[sum] && sum >= least) {
        return sum * unit;
      }
    }
    throw new IllegalStateException("no number of sticks costs as much as " + cost);
  }

  private static long commonDivisor(long a, long b) {
    return b == 0 ? a : commonDivisor(b, a % b);
  }
}
