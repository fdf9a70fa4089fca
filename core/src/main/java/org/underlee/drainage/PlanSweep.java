package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The exact partition of the plan: a line is swept across the field and stops wherever an outline
 * has a corner or two outlines cross, so between two stops the edges keep their order and every
 * part between two edges is a {@link Column}.
 *
 * <p>Areas are exact but for strips narrower than {@link WaterRules#SAME_PLAN}, which are left out.
 * The work grows with the number of stops times the outlines that each meets, and no tolerance can
 * make it fail, which a general overlay of several thousand slivers a sheet's thickness wide can.
 * Time: about as many columns as there are faces times the bays' stops, each in constant time.
 */
final class PlanSweep {
  private static final int DEEPEST = 24;

  private final List<Facet> facets;
  private final int catchmentsFrom;
  private final int outletsFrom;
  private final int shapes;
  private final List<SweepEdge> edges = new ArrayList<>();
  private final List<Column> columns = new ArrayList<>();
  private final List<Layer> layers = new ArrayList<>();
  private final List<int[]> slabs = new ArrayList<>();
  private final Stacker stacker = new Stacker();

  /** The shapes that are open where the sweep is, in the order in which it met them. */
  private int[] open = new int[64];

  private int opened;

  /**
   * @param areas outlines of catchments, then of outlets' openings
   * @param outlets how many of them are outlets
   * @param cuts outlines inside of faces, along which columns are parted and that is all
   */
  PlanSweep(List<Facet> facets, List<double[]> areas, int outlets, List<double[]> cuts) {
    this.facets = facets;
    this.catchmentsFrom = facets.size();
    this.outletsFrom = facets.size() + areas.size() - outlets;
    this.shapes = facets.size() + areas.size();
    for (int i = 0; i < facets.size(); i++) {
      add(i, facets.get(i).edges());
    }
    for (int i = 0; i < areas.size(); i++) {
      add(catchmentsFrom + i, areas.get(i));
    }
    for (int i = 0; i < cuts.size(); i++) {
      add(shapes + i, cuts.get(i));
    }
  }

  private void add(int shape, double[] e) {
    for (int i = 0; i < e.length; i += 4) {
      edges.add(new SweepEdge(shape, e[i], e[i + 1], e[i + 2], e[i + 3]));
    }
  }

  /** All columns in order of u, then v. */
  List<Column> columns() {
    return columns;
  }

  List<Layer> layers() {
    return layers;
  }

  /** First column of each slab and the one after its last. */
  List<int[]> slabs() {
    return slabs;
  }

  /**
   * @param more places at which to stop besides
   */
  PlanSweep sweep(double[] more) {
    double[] stops = stops(more);
    edges.sort((a, b) -> Double.compare(a.u0, b.u0));
    List<SweepEdge> active = new ArrayList<>();
    int next = 0;
    for (int i = 0; i + 1 < stops.length; i++) {
      double left = stops[i];
      double right = stops[i + 1];
      double middle = (left + right) / 2;
      while (next < edges.size() && edges.get(next).u0 < middle) {
        active.add(edges.get(next++));
      }
      active.removeIf(e -> e.u1 < middle);
      if (right - left > WaterRules.SAME_PLAN) {
        slab(active, left, right, 0);
      }
    }
    return this;
  }

  private double[] stops(double[] more) {
    double[] all = Arrays.copyOf(more, more.length + 2 * edges.size());
    int n = more.length;
    for (SweepEdge edge : edges) {
      all[n++] = edge.u0;
      all[n++] = edge.u1;
    }
    Arrays.sort(all);
    int kept = 0;
    for (double stop : all) {
      if (kept == 0 || stop - all[kept - 1] > WaterRules.SAME_PLAN) {
        all[kept++] = stop;
      }
    }
    return Arrays.copyOf(all, kept);
  }

  private void slab(List<SweepEdge> active, double left, double right, int depth) {
    active.forEach(e -> e.between(left, right));
    // The order stays from slab to slab, but for edges that are new.
    active.sort((a, b) -> Double.compare(a.middle, b.middle));
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
          column(left, right, lower, upper);
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

  private void column(double left, double right, SweepEdge lower, SweepEdge upper) {
    double highLeft = Math.max(lower.left, upper.left);
    double highRight = Math.max(lower.right, upper.right);
    double u = (left + right) / 2;
    double v = (lower.left + lower.right + highLeft + highRight) / 4;
    int catchment = -1;
    int outlet = -1;
    stacker.clear();
    for (int i = 0; i < opened; i++) {
      int shape = open[i];
      if (shape < catchmentsFrom) {
        stacker.add(facets.get(shape), facets.get(shape).at(u, v));
      } else if (shape < outletsFrom) {
        catchment = shape - catchmentsFrom;
      } else if (shape < shapes) {
        outlet = shape - outletsFrom;
      }
    }
    List<Layer> stack = stacker.layers(columns.size(), layers.size());
    layers.addAll(stack);
    columns.add(
        new Column(
            slabs.size(),
            left,
            right,
            lower.left,
            lower.right,
            highLeft,
            highRight,
            catchment,
            outlet,
            stack));
  }
}
