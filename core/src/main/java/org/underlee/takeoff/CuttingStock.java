package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Cuts pieces from stock lengths with few sticks. Pieces with a cut between them fit when {@code
 * Σ(length + kerf) ≤ stock + kerf}: the last cut is free when it falls on the stick's end.
 *
 * <p>Method: first-fit decreasing on the longest stock; when that uses more sticks than the lower
 * bound, a depth-first search for a packing with one stick less, repeated until none is found or
 * the steps run out; then each stick becomes the shortest stock that holds its pieces. The bound is
 * the larger of total length over stock and Martello and Toth's L2 ("Knapsack Problems", 1990,
 * section 8.3); it is proven, the packing is optimal in sticks of the longest stock when it meets
 * the bound.
 */
public final class CuttingStock {
  /** Steps of the search; more than enough for a deck's worth of pieces. */
  private static final int MOST_STEPS = 200_000;

  /** Lengths that differ by less than this are one: a thousandth of a millimetre. */
  private static final double SAME = 1e-6;

  /**
   * What to buy and cut.
   *
   * @param sticks what to buy and cut, the longest first
   * @param bound the proven least number of sticks of the longest stock
   */
  public record Plan(List<Stick> sticks, int bound) {
    public Plan {
      sticks = List.copyOf(sticks);
    }

    public boolean isProvenOptimal() {
      return sticks.size() == bound;
    }
  }

  private final double kerf;
  private final double capacity;
  private final double[] pieces;
  private int steps;

  private CuttingStock(double[] pieces, double stock, double kerf) {
    this.kerf = kerf;
    this.capacity = stock + kerf;
    this.pieces = pieces.clone();
    Arrays.sort(this.pieces);
    for (int i = 0; i < this.pieces.length / 2; i++) {
      double swap = this.pieces[i];
      this.pieces[i] = this.pieces[this.pieces.length - 1 - i];
      this.pieces[this.pieces.length - 1 - i] = swap;
    }
  }

  /**
   * Cuts the pieces from few sticks.
   *
   * @param lengths pieces wanted
   * @param stock lengths sold, any order, at least one
   * @throws IllegalArgumentException when a piece is longer than every stock length
   */
  public static Plan plan(List<Double> lengths, List<Double> stock, double kerf) {
    double longest = stock.stream().max(Double::compare).orElseThrow();
    for (double length : lengths) {
      if (length > longest + SAME) {
        throw new IllegalArgumentException(
            "a piece of " + length + " m is longer than the longest stock, " + longest + " m");
      }
    }
    double[] pieces = lengths.stream().mapToDouble(Double::doubleValue).toArray();
    CuttingStock search = new CuttingStock(pieces, longest, kerf);
    int bound = search.lowerBound();
    List<List<Double>> bins = search.best(bound);
    List<Stick> sticks = new ArrayList<>(bins.stream().map(b -> stick(b, stock, kerf)).toList());
    sticks.sort(
        Comparator.comparingDouble((Stick s) -> -s.stockLength())
            .thenComparing(s -> s.cuts().toString(), Comparator.reverseOrder()));
    return new Plan(sticks, bound);
  }

  private static Stick stick(List<Double> cuts, List<Double> stock, double kerf) {
    double used = cuts.stream().mapToDouble(c -> c + kerf).sum() - kerf;
    double length = stock.stream().filter(s -> s + SAME >= used).min(Double::compare).orElseThrow();
    double left = length - used;
    return new Stick(length, cuts, left > kerf ? left - kerf : 0);
  }

  private List<List<Double>> best(int bound) {
    List<List<Double>> best = firstFit();
    boolean better = true;
    while (better && best.size() > bound) {
      better = false;
      steps = 0;
      double[] room = new double[best.size() - 1];
      Arrays.fill(room, capacity);
      int[] where = new int[pieces.length];
      if (fits(0, room, where)) {
        best = gathered(where, room.length);
        better = true;
      }
    }
    return best;
  }

  private List<List<Double>> firstFit() {
    List<List<Double>> bins = new ArrayList<>();
    List<Double> room = new ArrayList<>();
    for (double piece : pieces) {
      int bin = 0;
      while (bin < bins.size() && room.get(bin) + SAME < piece + kerf) {
        bin++;
      }
      if (bin == bins.size()) {
        bins.add(new ArrayList<>());
        room.add(capacity);
      }
      bins.get(bin).add(piece);
      room.set(bin, room.get(bin) - piece - kerf);
    }
    return bins;
  }

  /** Places piece {@code i} and the rest; equal rooms are tried once, equal pieces in order. */
  private boolean fits(int i, double[] room, int[] where) {
    if (i == pieces.length) {
      return true;
    }
    if (++steps > MOST_STEPS) {
      return false;
    }
    double need = pieces[i] + kerf;
    int first = i > 0 && Math.abs(pieces[i] - pieces[i - 1]) < SAME ? where[i - 1] : 0;
    for (int bin = first; bin < room.length; bin++) {
      if (room[bin] + SAME >= need && isFirstWithThisRoom(room, bin, first)) {
        room[bin] -= need;
        where[i] = bin;
        if (fits(i + 1, room, where)) {
          return true;
        }
        room[bin] += need;
      }
    }
    return false;
  }

  private static boolean isFirstWithThisRoom(double[] room, int bin, int from) {
    for (int earlier = from; earlier < bin; earlier++) {
      if (Math.abs(room[earlier] - room[bin]) < SAME) {
        return false;
      }
    }
    return true;
  }

  private List<List<Double>> gathered(int[] where, int count) {
    List<List<Double>> bins = new ArrayList<>();
    for (int bin = 0; bin < count; bin++) {
      bins.add(new ArrayList<>());
    }
    for (int i = 0; i < pieces.length; i++) {
      bins.get(where[i]).add(pieces[i]);
    }
    bins.removeIf(List::isEmpty);
    return bins;
  }

  /** L2 holds for thresholds up to half a stick only. */
  private int lowerBound() {
    int best = boundWith(0);
    for (double small : pieces) {
      if (small + kerf <= capacity / 2) {
        best = Math.max(best, boundWith(small + kerf));
      }
    }
    return best;
  }

  /**
   * L2 for one threshold: pieces above half a stick need one each; what is smaller fills them up.
   */
  private int boundWith(double threshold) {
    int large = 0;
    int middle = 0;
    double middleLength = 0;
    double smallLength = 0;
    for (double piece : pieces) {
      double need = piece + kerf;
      if (need > capacity - threshold + SAME) {
        large++;
      } else if (need > capacity / 2 + SAME) {
        middle++;
        middleLength += need;
      } else if (need >= threshold - SAME) {
        smallLength += need;
      }
    }
    double over = smallLength - (middle * capacity - middleLength);
    int more = over > SAME ? (int) Math.ceil(over / capacity - 1e-9) : 0;
    return large + middle + more;
  }
}
