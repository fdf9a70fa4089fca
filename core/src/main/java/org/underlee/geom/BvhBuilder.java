package org.underlee.geom;

import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.RecursiveAction;

/**
 * Sorts triangles into a tree of boxes: each part is halved across its longest side by the middles
 * of the triangles, so that the place of every node is known beforehand and both halves are sorted
 * at the same time. Takes n log n steps.
 */
final class BvhBuilder {
  /** Triangles a leaf holds at most. */
  static final int LEAF = 4;

  /** Below this a part is sorted by one thread. */
  private static final int ALONE = 20_000;

  final double[] corners;
  final int[] order;
  final double[] boxes;
  final int[] right;
  final int[] from;
  private final double[] middles;
  private final Map<Integer, Integer> sizes = new HashMap<>();

  /**
   * @param corners nine numbers a triangle
   */
  BvhBuilder(double[] corners) {
    int count = corners.length / 9;
    this.corners = corners;
    order = new int[count];
    middles = new double[3 * count];
    for (int t = 0; t < count; t++) {
      order[t] = t;
      for (int axis = 0; axis < 3; axis++) {
        double a = corners[9 * t + axis];
        double b = corners[9 * t + 3 + axis];
        double c = corners[9 * t + 6 + axis];
        middles[3 * t + axis] = Math.min(a, Math.min(b, c)) + Math.max(a, Math.max(b, c));
      }
    }
    int nodes = count == 0 ? 0 : nodes(count);
    boxes = new double[6 * nodes];
    right = new int[nodes];
    from = new int[nodes + 1];
    if (count > 0) {
      new Part(0, 0, count).invoke();
    }
    from[nodes] = count;
  }

  /** Nodes of a part with this many triangles. */
  private int nodes(int count) {
    if (count <= LEAF) {
      return 1;
    }
    Integer known = sizes.get(count);
    if (known == null) {
      known = 1 + nodes(count / 2) + nodes(count - count / 2);
      sizes.put(count, known);
    }
    return known;
  }

  private final class Part extends RecursiveAction {
    private static final long serialVersionUID = 1;
    private final int node;
    private final int start;
    private final int end;

    Part(int node, int start, int end) {
      this.node = node;
      this.start = start;
      this.end = end;
    }

    @Override
    protected void compute() {
      from[node] = start;
      if (end - start <= LEAF) {
        bound();
        return;
      }
      int middle = start + (end - start) / 2;
      select(start, end - 1, middle, longestAxis());
      right[node] = node + 1 + sizes.getOrDefault(middle - start, 1);
      Part low = new Part(node + 1, start, middle);
      Part high = new Part(right[node], middle, end);
      if (end - start > ALONE) {
        invokeAll(low, high);
      } else {
        low.compute();
        high.compute();
      }
      join(6 * (node + 1), 6 * right[node]);
    }

    private void join(int low, int high) {
      for (int axis = 0; axis < 3; axis++) {
        boxes[6 * node + axis] = Math.min(boxes[low + axis], boxes[high + axis]);
        boxes[6 * node + 3 + axis] = Math.max(boxes[low + 3 + axis], boxes[high + 3 + axis]);
      }
    }

    private void bound() {
      for (int axis = 0; axis < 3; axis++) {
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (int i = start; i < end; i++) {
          for (int corner = 9 * order[i] + axis; corner < 9 * order[i] + 9; corner += 3) {
            min = Math.min(min, corners[corner]);
            max = Math.max(max, corners[corner]);
          }
        }
        boxes[6 * node + axis] = min;
        boxes[6 * node + 3 + axis] = max;
      }
    }

    private int longestAxis() {
      int longest = 0;
      double most = -1;
      for (int axis = 0; axis < 3; axis++) {
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (int i = start; i < end; i++) {
          double m = middles[3 * order[i] + axis];
          min = Math.min(min, m);
          max = Math.max(max, m);
        }
        if (max - min > most) {
          most = max - min;
          longest = axis;
        }
      }
      return longest;
    }
  }

  /**
   * Puts the triangle that belongs at {@code wanted} there, and no greater one before it: C. A. R.
   * Hoare, "Algorithm 65: find", 1961, with the middle of three as pivot.
   */
  private void select(int first, int last, int wanted, int axis) {
    int low = first;
    int high = last;
    while (low < high) {
      double pivot = pivot(low, high, axis);
      int i = low;
      int j = high;
      while (i <= j) {
        while (key(i, axis) < pivot) {
          i++;
        }
        while (key(j, axis) > pivot) {
          j--;
        }
        if (i <= j) {
          int held = order[i];
          order[i++] = order[j];
          order[j--] = held;
        }
      }
      if (wanted <= j) {
        high = j;
      } else if (wanted >= i) {
        low = i;
      } else {
        return;
      }
    }
  }

  private double pivot(int low, int high, int axis) {
    double a = key(low, axis);
    double b = key((low + high) >>> 1, axis);
    double c = key(high, axis);
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }

  private double key(int i, int axis) {
    return middles[3 * order[i] + axis];
  }
}
