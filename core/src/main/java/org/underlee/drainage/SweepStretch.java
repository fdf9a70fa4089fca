package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.underlee.finding.StopSign;

/** Sweeps a stretch between some of the stops of a {@link PlanSweep}. */
final class SweepStretch {
  private static final int DEEPEST = 24;

  private final SweepShapes shapes;
  private final StopSign stop;
  private final List<Column> columns = new ArrayList<>();
  private final List<int[]> slabs = new ArrayList<>();
  private final Stacker stacker = new Stacker();

  /** The shapes that are open where the sweep is, in the order in which it met them. */
  private int[] open = new int[64];

  private int opened;

  SweepStretch(SweepShapes shapes, StopSign stop) {
    this.shapes = shapes;
    this.stop = stop;
  }

  List<Column> columns() {
    return columns;
  }

  /** First column of each slab in this stretch and the one after its last. */
  List<int[]> slabs() {
    return slabs;
  }

  /**
   * @param edges of the whole plan in order of their lower u
   * @param first number of the stop to begin at
   */
  SweepStretch sweep(SweepEdge[] edges, double[] stops, int first, int last) {
    List<SweepEdge> active = new ArrayList<>();
    int next = 0;
    for (int i = first; i < last; i++) {
      stop.obey();
      double left = stops[i];
      double right = stops[i + 1];
      double middle = (left + right) / 2;
      while (next < edges.length && edges[next].u0 < middle) {
        if (edges[next].u1 >= middle) {
          active.add(edges[next].within(stops[first], stops[last]));
        }
        next++;
      }
      active.removeIf(e -> e.u1 < middle);
      if (right - left > WaterRules.SAME_PLAN) {
        slab(active, left, right, 0);
      }
    }
    return this;
  }

  private void slab(List<SweepEdge> active, double left, double right, int depth) {
    active.forEach(e -> e.between(left, right));
    // The order stays from slab to slab, but for edges that are new.
    active.sort(SweepEdge::compare);
    double crossing = depth < DEEPEST ? crossing(active, left, right) : Double.NaN;
    if (crossing > left + WaterRules.SAME_PLAN && crossing < right - WaterRules.SAME_PLAN) {
      slab(active, left, crossing, depth + 1);
      slab(active, crossing, right, depth + 1);
    } else {
      fill(active, left, right);
    }
  }

  private static double crossing(List<SweepEdge> order, double left, double right) {
    for (int i = 0; i + 1 < order.size(); i++) {
      SweepEdge lower = order.get(i);
      SweepEdge upper = order.get(i + 1);
      double atLeft = upper.left - lower.left;
      double atRight = upper.right - lower.right;
      if (Math.min(atLeft, atRight) < -WaterRules.SAME_PLAN) {
        return left + (right - left) * atLeft / (atLeft - atRight);
      }
    }
    return Double.NaN;
  }

  /** Strips too narrow to keep are taken in by the next one. */
  private void fill(List<SweepEdge> order, double left, double right) {
    int first = columns.size();
    opened = 0;
    int base = 0;
    for (int i = 0; i + 1 < order.size(); i++) {
      toggle(order.get(i).shape);
      SweepEdge lower = order.get(base);
      SweepEdge upper = order.get(i + 1);
      if (upper.left + upper.right - lower.left - lower.right > 2 * WaterRules.SAME_PLAN) {
        if (opened > 0) {
          columns.add(column(left, right, lower, upper));
        }
        base = i + 1;
      }
    }
    if (columns.size() > first) {
      slabs.add(new int[] {first, columns.size()});
    }
  }

  private void toggle(int shape) {
    int at = 0;
    while (at < opened && open[at] != shape) {
      at++;
    }
    if (at < opened) {
      System.arraycopy(open, at + 1, open, at, --opened - at);
    } else {
      open = opened == open.length ? Arrays.copyOf(open, 2 * opened) : open;
      open[opened++] = shape;
    }
  }

  private Column column(double left, double right, SweepEdge lower, SweepEdge upper) {
    double highLeft = Math.max(lower.left, upper.left);
    double highRight = Math.max(lower.right, upper.right);
    double u = (left + right) / 2;
    double v = (lower.left + lower.right + highLeft + highRight) / 4;
    int catchment = -1;
    int outlet = -1;
    stacker.clear();
    for (int i = 0; i < opened; i++) {
      int shape = open[i];
      if (shapes.isFacet(shape)) {
        stacker.add(shapes.facet(shape), shapes.facet(shape).at(u, v));
      } else {
        catchment = Math.max(catchment, shapes.catchment(shape));
        outlet = Math.max(outlet, shapes.outlet(shape));
      }
    }
    return new Column(
        left, right, lower.left, lower.right, highLeft, highRight, catchment, outlet, stacker);
  }
}
