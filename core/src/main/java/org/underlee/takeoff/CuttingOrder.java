package org.underlee.takeoff;

import java.util.List;
import java.util.stream.LongStream;

/**
 * A cutting order in whole numbers, so that nothing in the search is decided by rounding.
 *
 * <p>Its rows are the sizes, and after them the limited supplies: of a size at least so many are
 * wanted, of a supply at most so many sticks are there.
 *
 * @param sizes how many of the rows are sizes
 * @param wanted of each size, then the sticks of each supply
 * @param blocks what one cross-cut can give: first each size alone, in their order
 * @param offers what sticks there are; at least one of them without limit
 */
record CuttingOrder(int sizes, List<Integer> wanted, List<Block> blocks, List<Offer> offers) {
  /**
   * What one cross-cut gives.
   *
   * @param need what it takes of a stick, one cut included, micrometres
   * @param sizes of its pieces
   */
  record Block(long need, List<Integer> sizes) {
    Block {
      sizes = List.copyOf(sizes);
    }
  }

  /**
   * A stick.
   *
   * @param room that it has, one cut included, micrometres
   * @param cost of one; zero for what is on hand
   * @param supply its row where there are only so many of it, else less than zero
   */
  record Offer(long room, long cost, int supply) {
    boolean isLimited() {
      return supply >= 0;
    }
  }

  CuttingOrder {
    wanted = List.copyOf(wanted);
    blocks = List.copyOf(blocks);
    offers = List.copyOf(offers);
  }

  int[] wantedRows() {
    return wanted.stream().mapToInt(Integer::intValue).toArray();
  }

  int rows() {
    return wanted.size();
  }

  long cost(Pattern pattern) {
    return offers.get(pattern.offer()).cost();
  }

  /** A pattern of the blocks with these numbers. */
  Pattern pattern(int offer, int[] ofBlocks) {
    int[] counts = new int[rows()];
    for (int block : ofBlocks) {
      blocks.get(block).sizes().forEach(s -> counts[s]++);
    }
    if (offers.get(offer).isLimited()) {
      counts[offers.get(offer).supply()] = 1;
    }
    return new Pattern(offer, counts, ofBlocks);
  }

  long greatestCost() {
    return offers.stream().mapToLong(Offer::cost).max().orElseThrow();
  }

  /** Of what must be paid for. */
  long leastCost() {
    return costs().min().orElseThrow();
  }

  long greatestRoom() {
    return offers.stream().filter(o -> !o.isLimited()).mapToLong(Offer::room).max().orElseThrow();
  }

  /** The offer of least cost that is there without limit and has at least this much room. */
  int cheapestWith(long room) {
    int best = -1;
    for (int offer = 0; offer < offers.size(); offer++) {
      Offer o = offers.get(offer);
      boolean holds = !o.isLimited() && o.room() >= room;
      best = holds && (best < 0 || o.cost() < offers.get(best).cost()) ? offer : best;
    }
    return best;
  }

  /** The most pieces that lie side by side in a block. */
  int abreast() {
    return blocks.stream().mapToInt(b -> b.sizes().size()).max().orElse(1);
  }

  /** All costs are multiples of it. */
  long costStep() {
    return costs().reduce(0, CuttingOrder::commonDivisor);
  }

  /** Of what must be paid for, each once. */
  LongStream costs() {
    return offers.stream().mapToLong(Offer::cost).filter(c -> c > 0).distinct();
  }

  private static long commonDivisor(long a, long b) {
    return b == 0 ? a : commonDivisor(b, a % b);
  }
}
