package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
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

  /** An outline's edge, which it enters or leaves the outline at. */
  private static final class Edge {
    final Integer shape;
    final double u0;
    final double v0;
    final double u1;
    final double v1;

    /** Its v where the sweep is. */
    double now;

    Edge(int shape, double u0, double v0, double u1, double v1) {
      this.shape = shape;
      this.u0 = u0;
      this.v0 = v0;
      this.u1 = u1;
      this.v1 = v1;
    }

    double u0() {
      return u0;
    }

    double now() {
      return now;
    }

    double at(double u) {
      return u1 - u0 < WaterRules.SAME_PLAN ? (v0 + v1) / 2 : v0 + (v1 - v0) * (u - u0) / (u1 - u0);
    }
  }

  private final List<Facet> facets;
  private final int catchmentsFrom;
  private final int outletsFrom;
  private final int shapes;
  private final List<Edge> edges = new ArrayList<>();
  private final List<Column> columns = new ArrayList<>();
  private final List<Layer> layers = new ArrayList<>();
  private final List<int[]> slabs = new ArrayList<>();

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
      edges.add(new Edge(shape, e[i], e[i + 1], e[i + 2], e[i + 3]));
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
    edges.sort(Comparator.comparingDouble(Edge::u0));
    List<Edge> active = new ArrayList<>();
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
    for (Edge edge : edges) {
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

  private void slab(List<Edge> active, double left, double right, int depth) {
    double middle = (left + right) / 2;
    active.forEach(e -> e.now = e.at(middle));
    // The order stays from slab to slab, but for edges that are new.
    active.sort(Comparator.comparingDouble(Edge::now));
    double crossing = depth < DEEPEST ? crossing(active, left, right) : Double.NaN;
    if (crossing > left + WaterRules.SAME_PLAN && crossing < right - WaterRules.SAME_PLAN) {
      slab(active, left, crossing, depth + 1);
      slab(active, crossing, right, depth + 1);
    } else {
      fill(active, left, right);
    }
  }

  private static double crossing(List<Edge> order, double left, double right) {
    for (int i = 0; i + 1 < order.size(); i++) {
      double atLeft = order.get(i + 1).at(left) - order.get(i).at(left);
      double atRight = order.get(i + 1).at(right) - order.get(i).at(right);
      if (Math.min(atLeft, atRight) < -WaterRules.SAME_PLAN) {
        return left + (right - left) * atLeft / (atLeft - atRight);
      }
    }
    return Double.NaN;
  }

  /** Strips too narrow to keep are taken in by the next one. */
  private void fill(List<Edge> order, double left, double right) {
    int first = columns.size();
    List<Integer> open = new ArrayList<>();
    int base = 0;
    for (int i = 0; i + 1 < order.size(); i++) {
      Integer shape = order.get(i).shape;
      if (!open.remove(shape)) {
        open.add(shape);
      }
      Edge lower = order.get(base);
      Edge upper = order.get(i + 1);
      double twice = upper.at(left) + upper.at(right) - lower.at(left) - lower.at(right);
      if (twice > 2 * WaterRules.SAME_PLAN) {
        if (!open.isEmpty()) {
          column(open, left, right, lower, upper);
        }
        base = i + 1;
      }
    }
    if (columns.size() > first) {
      slabs.add(new int[] {first, columns.size()});
    }
  }

  private void column(List<Integer> open, double left, double right, Edge lower, Edge upper) {
    double lowLeft = lower.at(left);
    double lowRight = lower.at(right);
    double highLeft = Math.max(lowLeft, upper.at(left));
    double highRight = Math.max(lowRight, upper.at(right));
    int catchment = -1;
    int outlet = -1;
    List<Facet> faces = new ArrayList<>(open.size());
    for (int shape : open) {
      if (shape < catchmentsFrom) {
        faces.add(facets.get(shape));
      } else if (shape < outletsFrom) {
        catchment = shape - catchmentsFrom;
      } else if (shape < shapes) {
        outlet = shape - outletsFrom;
      }
    }
    double u = (left + right) / 2;
    double v = (lowLeft + lowRight + highLeft + highRight) / 4;
    columns.add(
        new Column(
            slabs.size(),
            left,
            right,
            lowLeft,
            lowRight,
            highLeft,
            highRight,
            catchment,
            outlet,
            stacked(faces, u, v)));
  }

  /** What each piece takes of the height, from the highest down. */
  private List<Layer> stacked(List<Facet> faces, double u, double v) {
    faces.sort(
        Comparator.comparingInt(Facet::piece)
            .thenComparingDouble(f -> -f.at(u, v))
            .thenComparing(f -> f.up() ? 0 : 1));
    List<Layer> stack = new ArrayList<>(faces.size() / 2 + 1);
    int i = 0;
    while (i < faces.size()) {
      Facet top = faces.get(i++);
      if (!top.up()) {
        continue;
      }
      int depth = 1;
      double bottom = top.at(u, v);
      while (i < faces.size() && faces.get(i).piece() == top.piece()) {
        Facet face = faces.get(i);
        double w = face.at(u, v);
        if (depth == 0 && bottom - w > WaterRules.TOUCH) {
          break;
        }
        depth += face.up() ? 1 : -1;
        bottom = w;
        i++;
      }
      stack.add(new Layer(0, columns.size(), top, top.at(u, v), bottom));
    }
    stack.sort(Comparator.comparingDouble(Layer::topAt).reversed());
    for (int k = 0; k < stack.size(); k++) {
      Layer l = stack.get(k);
      Layer numbered = new Layer(layers.size(), l.column(), l.top(), l.topAt(), l.bottomAt());
      layers.add(numbered);
      stack.set(k, numbered);
    }
    return stack;
  }
}
