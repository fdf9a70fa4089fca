package org.underlee.geom;

import java.util.Arrays;

/**
 * The convex hull of points in a plane, by Andrew's monotone chain, "Another efficient algorithm
 * for convex hulls in two dimensions", 1979: counter-clockwise, open, without points on its sides.
 * Cost is n log n.
 */
final class FlatHull {
  private FlatHull() {}

  /**
   * Indices into the points; one or two where the points are all in one place or on one line.
   *
   * @param xy two numbers a point
   */
  static int[] of(double[] xy) {
    int n = xy.length / 2;
    int[] order = sorted(xy, n);
    int[] hull = new int[2 * n + 1];
    int size = 0;
    for (int i = 0; i < n; i++) {
      size = push(xy, hull, size, 0, order[i]);
    }
    int lower = size;
    for (int i = n - 2; i >= 0; i--) {
      size = push(xy, hull, size, lower - 1, order[i]);
    }
    return Arrays.copyOf(hull, Math.max(1, size > 1 ? size - 1 : size));
  }

  private static int push(double[] xy, int[] hull, int size, int floor, int p) {
    int top = size;
    while (top - floor >= 2 && turn(xy, hull[top - 2], hull[top - 1], p) <= 0) {
      top--;
    }
    hull[top] = p;
    return top + 1;
  }

  private static double turn(double[] xy, int a, int b, int c) {
    double ax = xy[2 * a];
    double ay = xy[2 * a + 1];
    return (xy[2 * b] - ax) * (xy[2 * c + 1] - ay) - (xy[2 * b + 1] - ay) * (xy[2 * c] - ax);
  }

  /** By x, then y. Few points are put in order one by one, many by the library. */
  private static int[] sorted(double[] xy, int n) {
    int[] order = new int[n];
    if (n > 48) {
      Integer[] boxed = new Integer[n];
      Arrays.setAll(boxed, i -> i);
      Arrays.sort(boxed, (a, b) -> compare(xy, a, b));
      Arrays.setAll(order, i -> boxed[i]);
      return order;
    }
    for (int i = 0; i < n; i++) {
      int at = i;
      for (; at > 0 && compare(xy, order[at - 1], i) > 0; at--) {
        order[at] = order[at - 1];
      }
      order[at] = i;
    }
    return order;
  }

  private static int compare(double[] xy, int a, int b) {
    int byX = Double.compare(xy[2 * a], xy[2 * b]);
    return byX != 0 ? byX : Double.compare(xy[2 * a + 1], xy[2 * b + 1]);
  }
}
