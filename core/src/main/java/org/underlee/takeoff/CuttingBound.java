package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.StopSign;
import org.underlee.takeoff.Basis.Column;
import org.underlee.takeoff.LinearProgram.Row;

/**
 * The linear relaxation of a cutting order, by column generation (Gilmore and Gomory, "A linear
 * programming approach to the cutting-stock problem", Operations Research 9, 1961): sticks may be
 * bought in fractions. What it costs is a lower bound for whole sticks; which patterns it uses
 * tells where to search.
 *
 * <p>The bound is taken from the dual prices, made smaller until no pattern is worth more than it
 * costs, so that it holds whatever the rounding.
 */
final class CuttingBound {
  private static final double SAME = 1e-9;
  private static final double LEAST_USE = 1e-6;

  /** The relaxation's answer. */
  static final class Relaxed {
    private final double cost;
    private final List<Use> use;
    private final double[] price;

    /** How many sticks are cut to a pattern, more than zero. */
    record Use(Pattern pattern, double sticks) {}

    Relaxed(double cost, List<Use> use, double[] price) {
      this.cost = cost;
      this.use = List.copyOf(use);
      this.price = price.clone();
    }

    /** The lower bound. */
    double cost() {
      return cost;
    }

    List<Use> use() {
      return use;
    }

    /** What a piece of each size costs at the margin, and a stick of each supply saves. */
    double[] price() {
      return price.clone();
    }
  }

  private final CuttingOrder order;
  private final StopSign stop;
  private final Patterns patterns;
  private final List<Pattern> pool = new ArrayList<>();
  private final List<Column> columns = new ArrayList<>();

  CuttingBound(CuttingOrder order, StopSign stop) {
    this.order = order;
    this.stop = stop;
    this.patterns = new Patterns(order, stop);
  }

  /**
   * Relaxes what is still wanted.
   *
   * @param wanted of each size, and of each supply what is still there
   * @param not patterns that may not be used
   */
  Relaxed relax(int[] wanted, Set<Pattern> not) {
    List<Row> rows = new ArrayList<>();
    int free = 0;
    for (int row = 0; row < wanted.length; row++) {
      boolean supply = row >= order.sizes();
      rows.add(new Row(wanted[row], supply));
      free += supply ? wanted[row] : 0;
    }
    List<Column> allowed = new ArrayList<>();
    for (Column column : columns) {
      Pattern pattern = pool.get(column.tag());
      if (pattern.fits(wanted) && !not.contains(pattern)) {
        allowed.add(column);
      }
    }
    LinearProgram program =
        new LinearProgram(
            rows,
            allowed,
            (price, least) -> generated(price, least, wanted, not, allowed),
            (double) order.greatestCost(),
            SAME * order.greatestCost());
    LinearProgram.Solved solved = program.solve();
    double bound =
        solved.ended() && patterns.isExact()
            ? LinearProgram.proven(rows, solved.price(), slack(), (double) order.leastCost(), free)
            : 0;
    return new Relaxed(bound, used(solved), solved.price());
  }

  /** Whether its bounds hold: too much to try leaves them at zero, and nothing can be proven. */
  boolean isExact() {
    return patterns.isExact();
  }

  private List<Relaxed.Use> used(LinearProgram.Solved solved) {
    return solved.use().stream()
        .filter(u -> u.level() > LEAST_USE)
        .map(u -> new Relaxed.Use(pool.get(u.tag()), u.level()))
        .toList();
  }

  private Optional<Column> generated(
      double[] price, double least, int[] wanted, Set<Pattern> not, List<Column> allowed) {
    Optional<Column> best = Optional.empty();
    double saving = least;
    stop.obey();
    for (int offer = 0; offer < order.offers().size(); offer++) {
      CuttingOrder.Offer of = order.offers().get(offer);
      if (of.isLimited() && wanted[of.supply()] == 0) {
        continue;
      }
      Optional<Pattern> found = patterns.best(price, wanted, offer, of.cost() + saving, not);
      if (found.isPresent()) {
        Column column = column(found.get());
        allowed.add(column);
        saving = column.worth(price) - column.cost();
        best = Optional.of(column);
      }
    }
    return best;
  }

  private Column column(Pattern pattern) {
    double[] rows = new double[order.rows()];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = pattern.count(i);
    }
    Column column = new Column(pool.size(), order.cost(pattern), rows);
    pool.add(pattern);
    columns.add(column);
    return column;
  }

  /** What rounding may have made of a pattern's worth. */
  private double slack() {
    return SAME * order.greatestCost() * (order.rows() + 1);
  }

  /**
   * Every full pattern that a plan of no more than a given cost can use: one whose cost is above
   * its worth by no more than is left between the bound and that cost. A plan with the fewest
   * pieces can do with full patterns, where it may cut what is not wanted.
   *
   * @param most patterns to look for
   * @return nothing when there are more
   */
  Optional<List<Pattern>> within(double cost, int most) {
    int[] wanted = order.wantedRows();
    Relaxed relaxed = relax(wanted, Set.of());
    if (!isExact()) {
      return Optional.empty();
    }
    List<Pattern> all = new ArrayList<>();
    for (int offer = 0; offer < order.offers().size(); offer++) {
      double least = order.offers().get(offer).cost() - (cost - relaxed.cost()) - slack();
      Optional<List<Pattern>> full =
          patterns.full(relaxed.price(), wanted, offer, least, most - all.size());
      if (full.isEmpty()) {
        return Optional.empty();
      }
      all.addAll(full.get());
    }
    return Optional.of(all);
  }
}
