package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.underlee.takeoff.Patterns.Pattern;

/**
 * The linear relaxation of a cutting order, by column generation (Gilmore and Gomory, "A linear
 * programming approach to the cutting-stock problem", Operations Research 9, 1961): sticks may be
 * bought in fractions. What it costs is a lower bound for whole sticks; which patterns it uses
 * tells where to search.
 *
 * <p>The master problem has one row a size, so its basis inverse is kept dense. Demands are made a
 * little different from each other, so that no pivot is idle; the bound is taken from the dual
 * prices, made smaller until no pattern is worth more than it costs, so that it holds whatever the
 * rounding.
 */
final class CuttingBound {
  private static final double SAME = 1e-9;
  private static final double DIFFERENT = 1e-7;
  private static final double LEAST_USE = 1e-6;

  /** Stands for a piece too many, which costs nothing. */
  private static final int SURPLUS = -1;

  private static final int STAND_IN = -2;
  private static final int DEAR = 10;
  private static final int MOST_PIVOTS = 3000;
  private static final int PIVOTS_UNTIL_REFACTORED = 40;

  /**
   * The relaxation's answer.
   *
   * @param cost the lower bound
   * @param use how many sticks are cut to each pattern, more than zero each
   */
  record Relaxed(double cost, List<Use> use) {
    record Use(Pattern pattern, double sticks) {}
  }

  private final CuttingOrder order;
  private final Patterns patterns;
  private final List<Pattern> pool = new ArrayList<>();

  private int[] wanted = {};
  private Set<Pattern> forbidden = Set.of();
  private double[][] inverse = {};
  private Pattern[] basis = {};
  private double[] sticks = {};

  CuttingBound(CuttingOrder order) {
    this.order = order;
    this.patterns = new Patterns(order.needs());
  }

  /**
   * Relaxes what is still wanted.
   *
   * @param stillWanted of each size
   * @param not patterns that may not be used
   */
  Relaxed relax(int[] stillWanted, Set<Pattern> not) {
    wanted = stillWanted.clone();
    forbidden = not;
    begin();
    for (int pivots = 0; pivots < MOST_PIVOTS; pivots++) {
      if (pivots % PIVOTS_UNTIL_REFACTORED == PIVOTS_UNTIL_REFACTORED - 1) {
        refactor();
      }
      double[] price = prices();
      Pattern entering = entering(price);
      if (entering.isEmpty()) {
        return new Relaxed(bound(price), used());
      }
      pivot(entering);
    }
    return new Relaxed(0, used());
  }

  /** Each size by a stand-in so dear that any pattern which may be used takes its place. */
  private void begin() {
    int n = wanted.length;
    inverse = new double[n][n];
    basis = new Pattern[n];
    sticks = new double[n];
    for (int i = 0; i < n; i++) {
      basis[i] = single(STAND_IN, i, 1);
      inverse[i][i] = 1;
      sticks[i] = demand(i);
    }
  }

  private Pattern single(int offer, int size, int count) {
    int[] counts = new int[wanted.length];
    counts[size] = count;
    return new Pattern(offer, counts);
  }

  private double demand(int i) {
    return wanted[i] + DIFFERENT * (i + 1);
  }

  private double cost(Pattern pattern) {
    return switch (pattern.offer()) {
      case SURPLUS -> 0;
      case STAND_IN -> DEAR * order.greatestCost();
      default -> order.cost(pattern.offer());
    };
  }

  private double[] prices() {
    int n = wanted.length;
    double[] price = new double[n];
    for (int row = 0; row < n; row++) {
      double cost = cost(basis[row]);
      for (int i = 0; i < n; i++) {
        price[i] += cost * inverse[row][i];
      }
    }
    return price;
  }

  /** The column that saves most: a surplus, one known already, else the best there is. */
  private Pattern entering(double[] price) {
    Pattern none = new Pattern(0, new int[wanted.length]);
    Pattern best = none;
    double saving = SAME * order.greatestCost();
    for (int i = 0; i < wanted.length; i++) {
      if (-price[i] > saving) {
        saving = -price[i];
        best = single(SURPLUS, i, -1);
      }
    }
    for (Pattern known : pool) {
      double saved = known.worth(price) - order.cost(known.offer());
      if (saved > saving && known.fits(wanted) && !forbidden.contains(known)) {
        saving = saved;
        best = known;
      }
    }
    return best.isEmpty() ? generated(price, saving) : best;
  }

  private Pattern generated(double[] price, double least) {
    Pattern best = new Pattern(0, new int[wanted.length]);
    double saving = least;
    for (int offer = 0; offer < order.offers(); offer++) {
      double atLeast = order.cost(offer) + saving;
      Pattern found = patterns.best(price, wanted, offer, order.room(offer), atLeast, forbidden);
      if (!found.isEmpty()) {
        saving = found.worth(price) - order.cost(offer);
        best = found;
        pool.add(found);
      }
    }
    return best;
  }

  private void pivot(Pattern entering) {
    int n = wanted.length;
    double[] column = times(entering);
    int leaving = -1;
    for (int row = 0; row < n; row++) {
      if (column[row] > SAME
          && (leaving < 0
              || sticks[row] / column[row] < sticks[leaving] / column[leaving] - SAME * SAME)) {
        leaving = row;
      }
    }
    if (leaving < 0) {
      throw new IllegalStateException("the cutting order has no least cost");
    }
    double pivot = column[leaving];
    for (int i = 0; i < n; i++) {
      inverse[leaving][i] /= pivot;
    }
    sticks[leaving] /= pivot;
    for (int row = 0; row < n; row++) {
      double factor = column[row];
      if (row != leaving && factor != 0) {
        for (int i = 0; i < n; i++) {
          inverse[row][i] -= factor * inverse[leaving][i];
        }
        sticks[row] = Math.max(0, sticks[row] - factor * sticks[leaving]);
      }
    }
    basis[leaving] = entering;
  }

  private double[] times(Pattern pattern) {
    int n = wanted.length;
    double[] column = new double[n];
    for (int i = 0; i < n; i++) {
      int count = pattern.count(i);
      if (count != 0) {
        for (int row = 0; row < n; row++) {
          column[row] += inverse[row][i] * count;
        }
      }
    }
    return column;
  }

  /** The inverse anew from the basis, so that rounding does not build up (Gauss and Jordan). */
  private void refactor() {
    int n = wanted.length;
    double[][] rows = new double[n][2 * n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        rows[i][j] = basis[j].count(i);
      }
      rows[i][n + i] = 1;
    }
    for (int c = 0; c < n; c++) {
      int largest = c;
      for (int r = c + 1; r < n; r++) {
        largest = Math.abs(rows[r][c]) > Math.abs(rows[largest][c]) ? r : largest;
      }
      double[] swap = rows[c];
      rows[c] = rows[largest];
      rows[largest] = swap;
      for (int j = 2 * n - 1; j >= c; j--) {
        rows[c][j] /= rows[c][c];
      }
      for (int r = 0; r < n; r++) {
        double factor = rows[r][c];
        if (r != c && factor != 0) {
          for (int j = c; j < 2 * n; j++) {
            rows[r][j] -= factor * rows[c][j];
          }
        }
      }
    }
    for (int row = 0; row < n; row++) {
      inverse[row] = Arrays.copyOfRange(rows[row], n, 2 * n);
      sticks[row] = 0;
      for (int i = 0; i < n; i++) {
        sticks[row] += inverse[row][i] * demand(i);
      }
      sticks[row] = Math.max(0, sticks[row]);
    }
  }

  /** What the dual prices prove: no pattern is worth more than its cost and a little. */
  private double bound(double[] price) {
    double sum = 0;
    for (int i = 0; i < wanted.length; i++) {
      sum += Math.max(0, price[i]) * wanted[i];
    }
    double tooMuch = SAME * order.greatestCost() * (wanted.length + 1);
    return sum * (1 - tooMuch / order.leastCost());
  }

  private List<Relaxed.Use> used() {
    List<Relaxed.Use> used = new ArrayList<>();
    for (int row = 0; row < basis.length; row++) {
      double[] without = inverse[row];
      double x = 0;
      for (int i = 0; i < wanted.length; i++) {
        x += without[i] * wanted[i];
      }
      if (x > LEAST_USE && basis[row].offer() >= 0) {
        used.add(new Relaxed.Use(basis[row], x));
      }
    }
    return used;
  }
}
