package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Which columns lie side by side. */
final class Neighbours {
  /** Columns are side by side across strips that were too narrow to keep. */
  private static final double LEFT_OUT = 4 * WaterRules.SAME_PLAN;

  private final List<Column> columns;
  private final List<int[]> slabs;

  /** Sides that were asked for so far, by column. */
  private final List<@Nullable List<Side>> known;

  Neighbours(PlanSweep plan) {
    this.columns = plan.columns();
    this.slabs = plan.slabs();
    this.known = new ArrayList<>(Collections.nCopies(columns.size(), null));
  }

  /** All four sides; the number is the column's own. Every layer of a column asks for them. */
  List<Side> sides(int number) {
    List<Side> sides = known.get(number);
    if (sides == null) {
      sides = new ArrayList<>(6);
      sides.add(along(number, -1));
      sides.add(along(number, 1));
      across(number, -1, sides);
      across(number, 1, sides);
      known.set(number, sides);
    }
    return sides;
  }

  /** The side at the column's lower (−1) or higher (+1) v. */
  Side along(int number, int dv) {
    Column c = columns.get(number);
    int[] slab = slabs.get(c.slab());
    int next = number + dv;
    Optional<Column> beyond = Optional.empty();
    if (next >= slab[0] && next < slab[1]) {
      Column n = columns.get(next);
      double gap = dv > 0 ? n.low() - c.high() : c.low() - n.high();
      beyond = gap < LEFT_OUT ? Optional.of(n) : beyond;
    }
    return dv > 0
        ? new Side(beyond, c.width(), c.left(), c.highLeft(), c.right(), c.highRight(), 0, dv)
        : new Side(beyond, c.width(), c.left(), c.lowLeft(), c.right(), c.lowRight(), 0, dv);
  }

  /** The sides at the column's lower (−1) or higher (+1) u. */
  void across(int number, int du, List<Side> sides) {
    Column c = columns.get(number);
    double u = du > 0 ? c.right() : c.left();
    double from = du > 0 ? c.lowRight() : c.lowLeft();
    double to = du > 0 ? c.highRight() : c.highLeft();
    double done = from;
    int other = c.slab() + du;
    if (isBeside(c, other, du)) {
      int[] slab = slabs.get(other);
      for (int i = first(slab, from, du); i < slab[1]; i++) {
        Column n = columns.get(i);
        double low = du > 0 ? n.lowLeft() : n.lowRight();
        double high = du > 0 ? n.highLeft() : n.highRight();
        if (low >= to - WaterRules.SAME_PLAN) {
          break;
        }
        if (low - done > LEFT_OUT) {
          sides.add(new Side(Optional.empty(), low - done, u, done, u, low, du, 0));
        }
        double v0 = Math.max(low, from);
        double v1 = Math.min(high, to);
        if (v1 - v0 > WaterRules.SAME_PLAN) {
          sides.add(new Side(Optional.of(n), v1 - v0, u, v0, u, v1, du, 0));
        }
        done = Math.max(done, high);
      }
    }
    if (to - done > LEFT_OUT) {
      sides.add(new Side(Optional.empty(), to - done, u, done, u, to, du, 0));
    }
  }

  private boolean isBeside(Column c, int other, int du) {
    if (other < 0 || other >= slabs.size()) {
      return false;
    }
    Column n = columns.get(slabs.get(other)[0]);
    return (du > 0 ? n.left() - c.right() : c.left() - n.right()) < LEFT_OUT;
  }

  /** The first column of a slab that ends beyond v. */
  private int first(int[] slab, double v, int du) {
    int low = slab[0];
    int high = slab[1];
    while (low < high) {
      int middle = (low + high) / 2;
      Column n = columns.get(middle);
      if ((du > 0 ? n.highLeft() : n.highRight()) > v + WaterRules.SAME_PLAN) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  /** Number of the column at a place, or −1. */
  int at(double u, double v) {
    int low = 0;
    int high = slabs.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (columns.get(slabs.get(middle)[0]).right() > u) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    if (low == slabs.size() || columns.get(slabs.get(low)[0]).left() > u) {
      return -1;
    }
    int[] slab = slabs.get(low);
    int found = firstUpTo(slab, u, v);
    return found < slab[1] && edge(columns.get(found), u, false) <= v ? found : -1;
  }

  /** The first column of a slab whose far edge is not before v; they lie one after the other. */
  private int firstUpTo(int[] slab, double u, double v) {
    int low = slab[0];
    int high = slab[1];
    while (low < high) {
      int middle = (low + high) / 2;
      if (edge(columns.get(middle), u, true) >= v) {
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
