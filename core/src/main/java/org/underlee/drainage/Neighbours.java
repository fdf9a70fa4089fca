package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Which columns lie side by side. */
final class Neighbours {
  /** Columns are side by side across strips that were too narrow to keep. */
  static final double LEFT_OUT = 4 * WaterRules.SAME_PLAN;

  private final Column[] columns;
  private final List<int[]> slabs;

  /** By column: the first column that may lie beside it at its lower and at its higher u. */
  private final int[][] first;

  /**
   * Sides across that were asked for so far, by column: at its lower and at its higher u. Whoever
   * asks at the same time finds the same.
   */
  private final List<AtomicReferenceArray<@Nullable List<Side>>> known;

  Neighbours(PlanSweep plan) {
    this.columns = plan.columns().toArray(new Column[0]);
    this.slabs = plan.slabs();
    this.first = new int[][] {firsts(-1), firsts(1)};
    this.known =
        List.of(
            new AtomicReferenceArray<>(columns.length), new AtomicReferenceArray<>(columns.length));
  }

  /** The sides at its lower and its higher v. */
  List<Side> along(Column c) {
    return List.of(along(c, -1), along(c, 1));
  }

  /** All sides at its lower and its higher u. */
  List<Side> across(Column c) {
    List<Side> sides = new ArrayList<>(across(c, -1));
    sides.addAll(across(c, 1));
    return sides;
  }

  /** The side at the column's lower (−1) or higher (+1) v. */
  Side along(Column c, int dv) {
    int[] slab = slabs.get(c.slab());
    int next = c.number() + dv;
    Column beyond = Column.NOTHING;
    if (next >= slab[0] && next < slab[1]) {
      Column n = columns[next];
      double gap = dv > 0 ? n.low() - c.high() : c.low() - n.high();
      beyond = gap < LEFT_OUT ? n : beyond;
    }
    return dv > 0
        ? new Side(beyond, c.left(), c.highLeft(), c.right(), c.highRight(), 0, dv)
        : new Side(beyond, c.left(), c.lowLeft(), c.right(), c.lowRight(), 0, dv);
  }

  /**
   * The sides at the column's lower (−1) or higher (+1) u. Every layer of a column asks for them.
   */
  List<Side> across(Column c, int du) {
    AtomicReferenceArray<@Nullable List<Side>> there = known.get(du < 0 ? 0 : 1);
    List<Side> sides = there.get(c.number());
    if (sides == null) {
      sides = new ArrayList<>(2);
      across(c, du, sides);
      there.set(c.number(), sides);
    }
    return sides;
  }

  private void across(Column c, int du, List<Side> sides) {
    double u = du > 0 ? c.right() : c.left();
    double from = du > 0 ? c.lowRight() : c.lowLeft();
    double to = du > 0 ? c.highRight() : c.highLeft();
    double done = from;
    int other = c.slab() + du;
    if (isBeside(c, other, du)) {
      int[] slab = slabs.get(other);
      for (int i = first[du < 0 ? 0 : 1][c.number()]; i < slab[1]; i++) {
        Column n = columns[i];
        double low = du > 0 ? n.lowLeft() : n.lowRight();
        double high = du > 0 ? n.highLeft() : n.highRight();
        if (low >= to - WaterRules.SAME_PLAN) {
          break;
        }
        if (low - done > LEFT_OUT) {
          sides.add(new Side(Column.NOTHING, u, done, u, low, du, 0));
        }
        double v0 = Math.max(low, from);
        double v1 = Math.min(high, to);
        if (v1 - v0 > WaterRules.SAME_PLAN) {
          sides.add(new Side(n, u, v0, u, v1, du, 0));
        }
        done = Math.max(done, high);
      }
    }
    if (to - done > LEFT_OUT) {
      sides.add(new Side(Column.NOTHING, u, done, u, to, du, 0));
    }
  }

  private boolean isBeside(Column c, int other, int du) {
    if (other < 0 || other >= slabs.size()) {
      return false;
    }
    Column n = columns[slabs.get(other)[0]];
    return (du > 0 ? n.left() - c.right() : c.left() - n.right()) < LEFT_OUT;
  }

  /** The first column of the next slab that ends beyond the start of each column: both go up. */
  private int[] firsts(int du) {
    int[] firsts = new int[columns.length];
    IntStream.range(Math.max(0, -du), slabs.size() - Math.max(0, du))
        .parallel()
        .forEach(s -> firsts(slabs.get(s), slabs.get(s + du), du, firsts));
    return firsts;
  }

  private void firsts(int[] slab, int[] beside, int du, int[] firsts) {
    int at = beside[0];
    for (int number = slab[0]; number < slab[1]; number++) {
      Column c = columns[number];
      at = first(beside, at, du > 0 ? c.lowRight() : c.lowLeft(), du);
      firsts[number] = at;
    }
  }

  /**
   * @param near where the one of the column before was; edges are in order but for a tolerance
   */
  private int first(int[] slab, int near, double v, int du) {
    int at = near;
    while (at > slab[0] && endsBeyond(columns[at - 1], v, du)) {
      at--;
    }
    while (at < slab[1] && !endsBeyond(columns[at], v, du)) {
      at++;
    }
    return at;
  }

  private static boolean endsBeyond(Column n, double v, int du) {
    return (du > 0 ? n.highLeft() : n.highRight()) > v + WaterRules.SAME_PLAN;
  }

  /** The column at a place; {@link Column#NOTHING} where there is none. */
  Column at(double u, double v) {
    int low = 0;
    int high = slabs.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (columns[slabs.get(middle)[0]].right() > u) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    if (low == slabs.size() || columns[slabs.get(low)[0]].left() > u) {
      return Column.NOTHING;
    }
    int[] slab = slabs.get(low);
    int found = firstUpTo(slab, u, v);
    return found < slab[1] && edge(columns[found], u, false) <= v ? columns[found] : Column.NOTHING;
  }

  /** The first column of a slab whose far edge is not before v; they lie one after the other. */
  private int firstUpTo(int[] slab, double u, double v) {
    int low = slab[0];
    int high = slab[1];
    while (low < high) {
      int middle = (low + high) / 2;
      if (edge(columns[middle], u, true) >= v) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  /** Where one of its two edges across the fall lies at u. */
  private static double edge(Column c, double u, boolean far) {
    double share = (u - c.left()) / c.width();
    return far
        ? c.highLeft() + share * (c.highRight() - c.highLeft())
        : c.lowLeft() + share * (c.lowRight() - c.lowLeft());
  }
}
