package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.takeoff.Basis.Column;

/**
 * A linear program of least cost by the simplex method: rows that need at least or allow at most so
 * much, columns of no less than nothing. More columns may come while it is solved.
 *
 * <p>Right sides are made a little different from each other, so that no pivot is idle; what is
 * proven is taken from the prices, so that it holds all the same.
 */
final class LinearProgram {
  private static final double DIFFERENT = 1e-7;
  private static final int MOST_PIVOTS = 3000;

  /** Costs of stand-ins, in the greatest cost of a column. */
  private static final int DEAR = 10;

  /** Tag of columns that stand for nothing: what a row has too much or leaves over. */
  static final int NOTHING = -1;

  /**
   * A row.
   *
   * @param right not less than zero
   * @param atMost whether it allows so much, else it needs so much
   */
  record Row(double right, boolean atMost) {}

  /** Where more columns come from. */
  interface Source {
    /** A column that saves more than the least, at these prices of the rows. */
    Optional<Column> column(double[] price, double least);
  }

  /** The answer. */
  static final class Solved {
    private final double[] price;
    private final List<Use> use;
    private final boolean ended;
    private final List<Column> basis;

    /** How much there is of a tag, for the right sides as they were given. */
    record Use(int tag, double level) {}

    Solved(double[] price, List<Use> use, boolean ended, List<Column> basis) {
      this.price = price.clone();
      this.use = List.copyOf(use);
      this.ended = ended;
      this.basis = List.copyOf(basis);
    }

    /** Of each row; of no use when pivots ran out. */
    double[] price() {
      return price.clone();
    }

    List<Use> use() {
      return use;
    }

    /** Whether it is the least, and pivots did not run out before. */
    boolean ended() {
      return ended;
    }

    /** The columns that it is made of, one a row. */
    List<Column> basis() {
      return basis;
    }
  }

  private final List<Row> rows;
  private final List<Column> columns;
  private final Source more;
  private final double least;
  private final double greatestCost;

  /**
   * A program.
   *
   * @param greatestCost of a column
   * @param least saving that is taken for one
   */
  LinearProgram(
      List<Row> rows, List<Column> columns, Source more, double greatestCost, double least) {
    this.rows = rows;
    this.columns = columns;
    this.more = more;
    this.greatestCost = greatestCost;
    this.least = least;
  }

  Solved solve() {
    return solve(begin());
  }

  /**
   * Solves from a basis that is near the answer, such as that of a program with a row less.
   *
   * @param near one column a row, by which no row lacks anything
   */
  Solved solve(List<Column> near) {
    return solve(Basis.of(right(), near));
  }

  private Solved solve(Basis basis) {
    for (int pivots = 0; pivots < MOST_PIVOTS; pivots++) {
      double[] price = basis.prices();
      Optional<Column> entering = entering(price);
      if (entering.isEmpty()) {
        return new Solved(price, used(basis), true, basis.columns());
      }
      basis.pivot(entering.get());
    }
    return new Solved(basis.prices(), used(basis), false, basis.columns());
  }

  /** A stand-in so dear for each need that any column which may be used takes its place. */
  private Basis begin() {
    Column[] unit = new Column[rows.size()];
    for (int i = 0; i < unit.length; i++) {
      unit[i] = rows.get(i).atMost() ? single(i, 0, 1) : standIn(i, 1);
    }
    return new Basis(right(), unit);
  }

  private double[] right() {
    double[] right = new double[rows.size()];
    for (int i = 0; i < right.length; i++) {
      right[i] = rows.get(i).right() + DIFFERENT * (i + 1);
    }
    return right;
  }

  /**
   * What fills a row until a better column is found.
   *
   * @param count one where the row lacks something, minus one where it has too much
   */
  Column standIn(int row, int count) {
    return single(row, DEAR * greatestCost, count);
  }

  private Column single(int row, double cost, int count) {
    double[] own = new double[rows.size()];
    own[row] = count;
    return new Column(NOTHING, cost, own);
  }

  private Optional<Column> entering(double[] price) {
    Optional<Column> best = Optional.empty();
    double saving = least;
    for (int i = 0; i < price.length; i++) {
      boolean atMost = rows.get(i).atMost();
      double saved = atMost ? price[i] : -price[i];
      if (saved > saving) {
        saving = saved;
        best = Optional.of(single(i, 0, atMost ? 1 : -1));
      }
    }
    for (Column known : columns) {
      double saved = known.worth(price) - known.cost();
      if (saved > saving) {
        saving = saved;
        best = Optional.of(known);
      }
    }
    return best.isEmpty() ? more.column(price, least) : best;
  }

  private List<Solved.Use> used(Basis basis) {
    double[] exactly = rows.stream().mapToDouble(Row::right).toArray();
    List<Solved.Use> used = new ArrayList<>();
    for (int row = 0; row < rows.size(); row++) {
      int tag = basis.column(row).tag();
      if (tag != NOTHING) {
        used.add(new Solved.Use(tag, basis.level(row, exactly)));
      }
    }
    return used;
  }

  /**
   * What the prices prove any solution to cost at least.
   *
   * @param tooMuch that a column may be worth above its cost, by rounding
   * @param leastCost of a column that costs anything
   * @param free how many columns there may be that cost nothing
   */
  static double proven(
      List<Row> rows, double[] price, double tooMuch, double leastCost, double free) {
    double sum = 0;
    for (int i = 0; i < price.length; i++) {
      Row row = rows.get(i);
      sum += (row.atMost() ? Math.min(0, price[i]) : Math.max(0, price[i])) * row.right();
    }
    return sum - Math.abs(sum) * tooMuch / leastCost - free * tooMuch;
  }
}
