package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.underlee.finding.StopSign;

/**
 * Finds patterns of much worth that fit a stick: a bounded knapsack, solved exactly by depth first
 * search with the bound of Dantzig (worth per length of the best block left, times the room left).
 * Blocks are tried in falling worth per length, most copies first.
 */
final class Patterns {
  private static final double SAME = 1e-9;
  private static final long MOST_STEPS = 3_000_000;

  /**
   * All that {@link #best} may try for one order: a few seconds. Orders of one deck need less than
   * a hundredth of it; a building of many decks, whose sizes differ by little, can need without
   * end.
   */
  private static final long MOST_BEST_STEPS = 200_000_000;

  /** So many steps take less than a millisecond. */
  private static final int STEPS_BETWEEN_LOOKS = 1 << 15;

  private final CuttingOrder order;
  private final StopSign stop;
  private final long[] needs;

  /** Of each block, its sizes, each once, and how many pieces of each it has. */
  private final int[][] sizes;

  private final int[][] copies;

  /** The state of one search: the blocks that are tried, best first, and what each is worth. */
  private int[] tried = {};

  private double[] worths = {};
  private int[] left = {};
  private int[] count = {};
  private Visitor visitor = worth -> false;
  private double atLeast;
  private long stepsLeft;
  private long bestStepsLeft = MOST_BEST_STEPS;
  private boolean exact = true;

  /** Told of what fits and is worth enough. */
  private interface Visitor {
    /** Whether the search may end. */
    boolean found(double worth);
  }

  Patterns(CuttingOrder order, StopSign stop) {
    this.order = order;
    this.stop = stop;
    this.needs = order.blocks().stream().mapToLong(CuttingOrder.Block::need).toArray();
    this.sizes =
        order.blocks().stream()
            .map(b -> b.sizes().stream().mapToInt(Integer::intValue).distinct().toArray())
            .toArray(int[][]::new);
    this.copies =
        IntStream.range(0, sizes.length)
            .mapToObj(b -> copies(order.blocks().get(b).sizes(), sizes[b]))
            .toArray(int[][]::new);
  }

  private static int[] copies(List<Integer> all, int[] sizes) {
    return Arrays.stream(sizes).map(s -> Collections.frequency(all, s)).toArray();
  }

  /**
   * The pattern of most worth.
   *
   * @param worth of one piece of each size, and of a stick of each supply
   * @param wanted the most copies of each size
   * @param moreThan patterns of no more worth than this are of no use
   * @param not patterns that may not be used
   */
  Optional<Pattern> best(
      double[] worth, int[] wanted, int offer, double moreThan, Set<Pattern> not) {
    List<int[]> better = new ArrayList<>();
    double supply = supplyWorth(worth, offer);
    atLeast = moreThan - supply + SAME;
    stepsLeft = bestStepsLeft;
    visitor =
        found -> {
          if (not.isEmpty() || !not.contains(pattern(offer, count))) {
            atLeast = found + SAME;
            better.add(count.clone());
          }
          return false;
        };
    exact &= !search(worth, wanted, offer, block -> worthOf(worth, block) > SAME);
    bestStepsLeft = Math.max(0, stepsLeft);
    return better.isEmpty()
        ? Optional.empty()
        : Optional.of(pattern(offer, better.get(better.size() - 1)));
  }

  /** Whether every search for the best was made to its end, so that what it did not find is not. */
  boolean isExact() {
    return exact;
  }

  /**
   * Every pattern of at least this worth to which nothing that is wanted can be added.
   *
   * @return nothing when there are more than {@code most}, or too much would have to be tried
   */
  Optional<List<Pattern>> full(double[] worth, int[] wanted, int offer, double least, int most) {
    List<Pattern> all = new ArrayList<>();
    atLeast = least - supplyWorth(worth, offer);
    stepsLeft = MOST_STEPS;
    visitor =
        found -> {
          if (isFull(offer)) {
            all.add(pattern(offer, count));
          }
          return all.size() > most;
        };
    boolean ended = search(worth, wanted, offer, block -> true);
    return ended ? Optional.empty() : Optional.of(all);
  }

  private double supplyWorth(double[] worth, int offer) {
    CuttingOrder.Offer of = order.offers().get(offer);
    return of.isLimited() ? worth[of.supply()] : 0;
  }

  private double worthOf(double[] worth, int block) {
    double sum = 0;
    for (int i = 0; i < sizes[block].length; i++) {
      sum += copies[block][i] * worth[sizes[block][i]];
    }
    return sum;
  }

  private boolean search(
      double[] worth, int[] wanted, int offer, java.util.function.IntPredicate isTried) {
    long room = order.offers().get(offer).room();
    int n = needs.length;
    worths = IntStream.range(0, n).mapToDouble(b -> worthOf(worth, b)).toArray();
    tried =
        IntStream.range(0, n)
            .filter(b -> isTried.test(b) && needs[b] <= room && most(b, wanted) > 0)
            .boxed()
            .sorted((a, b) -> Double.compare(worths[b] / needs[b], worths[a] / needs[a]))
            .mapToInt(Integer::intValue)
            .toArray();
    left = wanted.clone();
    count = new int[n];
    return search(0, room, 0);
  }

  /** How many of a block can be cut before something is cut that is not wanted. */
  private int most(int block, int[] wanted) {
    int most = Integer.MAX_VALUE;
    for (int i = 0; i < sizes[block].length; i++) {
      most = Math.min(most, wanted[sizes[block][i]] / copies[block][i]);
    }
    return most;
  }

  private boolean search(int depth, long room, double worth) {
    if (--stepsLeft < 0) {
      return true;
    }
    if (stepsLeft % STEPS_BETWEEN_LOOKS == 0) {
      stop.obey();
    }
    if (depth == tried.length) {
      return worth >= atLeast && visitor.found(worth);
    }
    int block = tried[depth];
    long need = needs[block];
    if (worth + room * Math.max(0, worths[block] / need) < atLeast) {
      return false;
    }
    int most = (int) Math.min(most(block, left), room / need);
    take(block, most);
    for (int n = most; n >= 0; n--) {
      count[block] = n;
      if (search(depth + 1, room - n * need, worth + n * worths[block])) {
        return true;
      }
      take(block, n > 0 ? -1 : 0);
    }
    return false;
  }

  private void take(int block, int times) {
    for (int i = 0; i < sizes[block].length; i++) {
      left[sizes[block][i]] -= times * copies[block][i];
    }
  }

  private boolean isFull(int offer) {
    long room = order.offers().get(offer).room();
    for (int block : tried) {
      room -= count[block] * needs[block];
    }
    for (int block : tried) {
      if (needs[block] <= room && most(block, left) > 0) {
        return false;
      }
    }
    return true;
  }

  private Pattern pattern(int offer, int[] counts) {
    int[] blocks =
        Arrays.stream(tried)
            .flatMap(b -> IntStream.generate(() -> b).limit(counts[b]))
            .sorted()
            .toArray();
    return order.pattern(offer, blocks);
  }
}
