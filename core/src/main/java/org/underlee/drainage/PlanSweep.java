package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.underlee.finding.StopSign;

/**
 * The exact partition of the plan: a line is swept across the field and stops wherever an outline
 * has a corner or two outlines cross, so between two stops the edges keep their order and every
 * part between two edges is a {@link Column}. Stretches of the way are swept at the same time, each
 * by a {@link SweepStretch}; what comes out does not depend on how many there are.
 *
 * <p>Areas are exact but for strips narrower than {@link WaterRules#SAME_PLAN}, which are left out,
 * and ends nearer than {@link WaterRules#SAME_STOP}, which are one. The work grows with the number
 * of stops times the outlines that each meets, and no tolerance can make it fail, which a general
 * overlay of several thousand slivers a sheet's thickness wide can. Time: about as many columns as
 * there are faces times the bays' stops, each in constant time.
 */
final class PlanSweep {
  /** Enough that processors wait little for each other, and few enough to cost nothing. */
  static final int STRETCHES = 8;

  private final SweepShapes shapes;
  private final List<SweepEdge> edges = new ArrayList<>();
  private final List<Column> columns = new ArrayList<>();
  private final List<int[]> slabs = new ArrayList<>();
  private int layers;

  /**
   * @param areas outlines of catchments, then of outlets' openings
   * @param outlets how many of them are outlets
   * @param cuts outlines inside of faces, along which columns are parted and that is all
   */
  PlanSweep(List<Facet> facets, List<double[]> areas, int outlets, List<double[]> cuts) {
    this.shapes = new SweepShapes(facets, areas.size(), outlets);
    for (int i = 0; i < facets.size(); i++) {
      add(i, facets.get(i).edges());
    }
    for (int i = 0; i < areas.size(); i++) {
      add(facets.size() + i, areas.get(i));
    }
    for (int i = 0; i < cuts.size(); i++) {
      add(facets.size() + areas.size() + i, cuts.get(i));
    }
  }

  private void add(int shape, double[] e) {
    for (int i = 0; i < e.length; i += 4) {
      edges.add(new SweepEdge(shape, e[i], e[i + 1], e[i + 2], e[i + 3]));
    }
  }

  /** All columns in order of u, then v. */
  List<Column> columns() {
    return Collections.unmodifiableList(columns);
  }

  /** How many there are in all columns. */
  int layers() {
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
    return sweep(more, STRETCHES);
  }

  PlanSweep sweep(double[] more, int stretches) {
    double[] stops = stops(more);
    SweepEdge[] inOrder = edges.toArray(new SweepEdge[0]);
    Arrays.parallelSort(inOrder, (a, b) -> Double.compare(a.u0, b.u0));
    for (int i = 0; i < inOrder.length; i++) {
      inOrder[i].number(i);
    }
    StopSign stop = StopSign.here();
    int[] ends = ends(stops, stretches);
    IntStream.range(0, stretches)
        .parallel()
        .mapToObj(i -> new SweepStretch(shapes, stop).sweep(inOrder, stops, ends[i], ends[i + 1]))
        .forEachOrdered(this::add);
    return this;
  }

  /** The stops that stretches end at, so that each meets about as many edges. */
  private int[] ends(double[] stops, int stretches) {
    long[] met = new long[Math.max(1, stops.length)];
    for (SweepEdge edge : edges) {
      met[at(stops, edge.u0)]++;
      met[at(stops, edge.u1)]--;
    }
    long open = 0;
    long sum = 0;
    for (int i = 0; i < met.length; i++) {
      open += met[i];
      sum += open;
      met[i] = sum;
    }
    int[] ends = new int[stretches + 1];
    for (int i = 1, at = 0; i < stretches; i++) {
      while (at + 1 < met.length && met[at] * stretches < sum * i) {
        at++;
      }
      ends[i] = at;
    }
    ends[stretches] = Math.max(0, stops.length - 1);
    return ends;
  }

  /** The last stop up to a place. */
  private static int at(double[] stops, double u) {
    int found = Arrays.binarySearch(stops, u);
    return found >= 0 ? found : Math.max(0, -found - 2);
  }

  private void add(SweepStretch stretch) {
    int before = columns.size();
    for (int[] slab : stretch.slabs()) {
      for (int i = slab[0]; i < slab[1]; i++) {
        Column column = stretch.columns().get(i);
        column.number(before + i, slabs.size(), layers);
        columns.add(column);
        layers += column.layers().length;
      }
      slabs.add(new int[] {before + slab[0], before + slab[1]});
    }
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
      if (kept == 0 || stop - all[kept - 1] > WaterRules.SAME_STOP) {
        all[kept++] = stop;
      }
    }
    return Arrays.copyOf(all, kept);
  }
}
