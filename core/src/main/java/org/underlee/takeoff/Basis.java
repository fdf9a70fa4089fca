package org.underlee.takeoff;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The basis of a linear program in the simplex method, with its inverse kept dense: there are few
 * rows. Knows columns by a tag and nothing of what they mean.
 */
final class Basis {
  private static final double SAME = 1e-9;
  private static final int PIVOTS_UNTIL_REFACTORED = 40;

  /** A column: what it stands for, what one costs, and what one gives to each row. */
  static final class Column {
    private final int tag;
    private final double cost;
    private final double[] rows;

    /** The rows to which it gives anything, and what: few. */
    private final int[] used;

    private final double[] given;

    Column(int tag, double cost, double[] rows) {
      this.tag = tag;
      this.cost = cost;
      this.rows = rows.clone();
      this.used = IntStream.range(0, rows.length).filter(i -> rows[i] != 0).toArray();
      this.given = Arrays.stream(used).mapToDouble(i -> rows[i]).toArray();
    }

    /** The same where there is one more row, to which it gives nothing. */
    Column withRow() {
      return new Column(tag, cost, Arrays.copyOf(rows, rows.length + 1));
    }

    int tag() {
      return tag;
    }

    double cost() {
      return cost;
    }

    double worth(double[] price) {
      double sum = 0;
      for (int i = 0; i < used.length; i++) {
        sum += given[i] * price[used[i]];
      }
      return sum;
    }
  }

  private final double[] right;
  private final Column[] columns;
  private double[][] inverse;
  private final double[] level;
  private int pivots;

  /**
   * Begins with one column a row that gives one to it and nothing to others.
   *
   * @param right what each row needs, not less than zero
   */
  Basis(double[] right, Column[] unit) {
    this.right = right.clone();
    this.columns = unit.clone();
    this.level = right.clone();
    this.inverse = new double[right.length][right.length];
    for (int i = 0; i < right.length; i++) {
      inverse[i][i] = 1;
    }
  }

  /**
   * Begins with columns that are a basis, and by which no row lacks anything.
   *
   * @param right what each row needs
   */
  static Basis of(double[] right, List<Column> columns) {
    Basis basis = new Basis(right, columns.toArray(Column[]::new));
    basis.refactor();
    return basis;
  }

  double[] prices() {
    double[] price = new double[right.length];
    for (int row = 0; row < right.length; row++) {
      double cost = columns[row].cost();
      if (cost != 0) {
        for (int i = 0; i < price.length; i++) {
          price[i] += cost * inverse[row][i];
        }
      }
    }
    return price;
  }

  /** Brings a column in for the one that it drives out first. */
  void pivot(Column entering) {
    double[] column = times(entering);
    int leaving = -1;
    for (int row = 0; row < column.length; row++) {
      if (column[row] > SAME
          && (leaving < 0
              || level[row] / column[row] < level[leaving] / column[leaving] - SAME * SAME)) {
        leaving = row;
      }
    }
    if (leaving < 0) {
      throw new IllegalStateException("the cutting order has no least cost");
    }
    eliminate(leaving, column);
    columns[leaving] = entering;
    if (++pivots % PIVOTS_UNTIL_REFACTORED == 0) {
      refactor();
    }
  }

  private void eliminate(int leaving, double[] column) {
    double pivot = column[leaving];
    double[] own = inverse[leaving];
    for (int i = 0; i < own.length; i++) {
      own[i] /= pivot;
    }
    level[leaving] /= pivot;
    for (int row = 0; row < column.length; row++) {
      double factor = column[row];
      if (row != leaving && factor != 0) {
        double[] other = inverse[row];
        for (int i = 0; i < other.length; i++) {
          other[i] -= factor * own[i];
        }
        level[row] = Math.max(0, level[row] - factor * level[leaving]);
      }
    }
  }

  private double[] times(Column entering) {
    double[] column = new double[right.length];
    for (int i : entering.used) {
      double count = entering.rows[i];
      for (int row = 0; row < column.length; row++) {
        column[row] += inverse[row][i] * count;
      }
    }
    return column;
  }

  /** The inverse anew from the columns, so that rounding does not build up (Gauss and Jordan). */
  private void refactor() {
    int n = right.length;
    double[][] rows = new double[n][2 * n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        rows[i][j] = columns[j].rows[i];
      }
      rows[i][n + i] = 1;
    }
    for (int c = 0; c < n; c++) {
      bringUp(rows, c);
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
      level[row] = Math.max(0, level(row, right));
    }
  }

  /** Puts the row with the greatest number of a column into its place. */
  private static void bringUp(double[][] rows, int c) {
    int largest = c;
    for (int r = c + 1; r < rows.length; r++) {
      largest = Math.abs(rows[r][c]) > Math.abs(rows[largest][c]) ? r : largest;
    }
    double[] swap = rows[c];
    rows[c] = rows[largest];
    rows[largest] = swap;
  }

  int rows() {
    return columns.length;
  }

  Column column(int row) {
    return columns[row];
  }

  List<Column> columns() {
    return List.of(columns);
  }

  /** How much there is of a row's column, for any right side. */
  double level(int row, double[] rightSide) {
    double sum = 0;
    for (int i = 0; i < rightSide.length; i++) {
      sum += inverse[row][i] * rightSide[i];
    }
    return sum;
  }
}
