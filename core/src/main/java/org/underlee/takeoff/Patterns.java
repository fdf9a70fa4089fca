package org.underlee.takeoff;

import java.util.Arrays;
import java.util.Set;

/**
 * Finds the pattern of most worth that fits a stick: a bounded knapsack, solved exactly by depth
 * first search with the bound of Dantzig (worth per length of the best size left, times the room
 * left). Sizes are tried in falling worth per length, most copies first.
 */
final class Patterns {
  private static final double SAME = 1e-9;

  private final long[] needs;

  /** The sizes that have worth, in falling worth per length; the state of one search. */
  private int[] order = {};

  private double[] worths = {};
  private int[] most = {};
  private int[] count = {};
  private int[] best = {};
  private double bestWorth;
  private Set<Pattern> forbidden = Set.of();
  private int offer;

  /**
   * @param needs what each size takes of a stick, its cut included
   */
  Patterns(long[] needs) {
    this.needs = needs.clone();
  }

  /**
   * The pattern of most worth.
   *
   * @param worth of one piece of each size
   * @param wanted the most copies of each size
   * @param room what a stick of the offer has, one cut included
   * @param atLeast patterns of no more worth than this are of no use
   * @param not patterns that may not be used
   * @return how many of each size; nothing of any when no pattern is of use
   */
  Pattern best(
      double[] worth, int[] wanted, int offer, long room, double atLeast, Set<Pattern> not) {
    order =
        java.util.stream.IntStream.range(0, needs.length)
            .filter(i -> worth[i] > SAME && wanted[i] > 0 && needs[i] <= room)
            .boxed()
            .sorted((a, b) -> Double.compare(worth[b] / needs[b], worth[a] / needs[a]))
            .mapToInt(Integer::intValue)
            .toArray();
    this.worths = worth;
    this.most = wanted;
    this.offer = offer;
    this.forbidden = not;
    count = new int[needs.length];
    best = new int[needs.length];
    bestWorth = atLeast;
    search(0, room, 0);
    return new Pattern(offer, best);
  }

  private void search(int depth, long room, double worth) {
    if (depth == order.length) {
      if (worth > bestWorth + SAME && isAllowed()) {
        bestWorth = worth;
        best = count.clone();
      }
      return;
    }
    int size = order[depth];
    if (worth + room * (worths[size] / needs[size]) <= bestWorth + SAME) {
      return;
    }
    for (int n = (int) Math.min(most[size], room / needs[size]); n >= 0; n--) {
      count[size] = n;
      search(depth + 1, room - n * needs[size], worth + n * worths[size]);
    }
    count[size] = 0;
  }

  private boolean isAllowed() {
    return forbidden.isEmpty() || !forbidden.contains(new Pattern(offer, count));
  }

  /** Pieces cut from one stick. */
  static final class Pattern {
    private final int offer;
    private final int[] counts;

    /**
     * A pattern.
     *
     * @param offer which of the stock lengths
     * @param counts of each size
     */
    Pattern(int offer, int[] counts) {
      this.offer = offer;
      this.counts = counts.clone();
    }

    int offer() {
      return offer;
    }

    int count(int size) {
      return counts[size];
    }

    Pattern times(int sticks) {
      return new Pattern(offer, Arrays.stream(counts).map(n -> n * sticks).toArray());
    }

    boolean isEmpty() {
      return Arrays.stream(counts).allMatch(n -> n == 0);
    }

    boolean fits(int[] wanted) {
      for (int i = 0; i < counts.length; i++) {
        if (counts[i] > wanted[i]) {
          return false;
        }
      }
      return true;
    }

    double worth(double[] each) {
      double sum = 0;
      for (int i = 0; i < counts.length; i++) {
        sum += counts[i] * each[i];
      }
      return sum;
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Pattern p && p.offer == offer && Arrays.equals(p.counts, counts);
    }

    @Override
    public int hashCode() {
      return 31 * Arrays.hashCode(counts) + offer;
    }
  }
}
