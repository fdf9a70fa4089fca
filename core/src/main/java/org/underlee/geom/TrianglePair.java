package org.underlee.geom;

/**
 * Two triangles in space, each nine numbers in an array: whether they share a point, decided
 * without rounding, and how far they are apart, in doubles.
 *
 * <p>Two triangles share a point when an edge of one goes through the other, which the sides of
 * planes tell; in one plane, when edges cross or one holds the other. Edges and corners belong to a
 * triangle. A triangle without area has no plane and must not be given.
 */
final class TrianglePair {
  private static final int[] NEXT = {3, 6, 0};

  private TrianglePair() {}

  /** Whether corners {@code p[a…a+8]} and {@code q[b…b+8]} have a point in common. */
  static boolean meet(double[] p, int a, double[] q, int b) {
    int q0 = Orient.sign(p, a, p, a + 3, p, a + 6, q, b);
    int q1 = Orient.sign(p, a, p, a + 3, p, a + 6, q, b + 3);
    int q2 = Orient.sign(p, a, p, a + 3, p, a + 6, q, b + 6);
    if (q0 == q1 && q1 == q2) {
      return q0 == 0 && meetInPlane(p, a, q, b);
    }
    int p0 = Orient.sign(q, b, q, b + 3, q, b + 6, p, a);
    int p1 = Orient.sign(q, b, q, b + 3, q, b + 6, p, a + 3);
    int p2 = Orient.sign(q, b, q, b + 3, q, b + 6, p, a + 6);
    if (p0 == p1 && p1 == p2) {
      return false;
    }
    return crosses(p, a, a + 3, p0, p1, q, b)
        || crosses(p, a + 3, a + 6, p1, p2, q, b)
        || crosses(p, a + 6, a, p2, p0, q, b)
        || crosses(q, b, b + 3, q0, q1, p, a)
        || crosses(q, b + 3, b + 6, q1, q2, p, a)
        || crosses(q, b + 6, b, q2, q0, p, a);
  }

  /** Whether a triangle has no area. */
  static boolean isFlat(double[] p, int a) {
    return Orient.sign(p, a, p, a + 3, p, a + 6, 0, 1) == 0
        && Orient.sign(p, a, p, a + 3, p, a + 6, 1, 2) == 0
        && Orient.sign(p, a, p, a + 3, p, a + 6, 2, 0) == 0;
  }

  /** Whether an edge, whose ends lie on sides {@code s} and {@code t}, goes through a triangle. */
  private static boolean crosses(double[] p, int from, int to, int s, int t, double[] q, int b) {
    if (s == t) {
      return false; // on one side; or in the plane, and then other edges tell
    }
    int u = Orient.sign(p, from, p, to, q, b, q, b + 3);
    int v = Orient.sign(p, from, p, to, q, b + 3, q, b + 6);
    if (u * v < 0) {
      return false;
    }
    int w = Orient.sign(p, from, p, to, q, b + 6, q, b);
    return u * w >= 0 && v * w >= 0;
  }

  private static boolean meetInPlane(double[] p, int a, double[] q, int b) {
    int x = 0;
    int y = 1;
    if (Orient.sign(p, a, p, a + 3, p, a + 6, x, y) == 0) {
      x = 1;
      y = 2;
      if (Orient.sign(p, a, p, a + 3, p, a + 6, x, y) == 0) {
        x = 2;
        y = 0;
      }
    }
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        if (edgesMeet(p, a + 3 * i, a + NEXT[i], q, b + 3 * j, b + NEXT[j], x, y)) {
          return true;
        }
      }
    }
    return holds(p, a, q, b, x, y) || holds(q, b, p, a, x, y);
  }

  private static boolean edgesMeet(
      double[] p, int a, int b, double[] q, int c, int d, int x, int y) {
    int s = Orient.sign(p, a, p, b, q, c, x, y);
    int t = Orient.sign(p, a, p, b, q, d, x, y);
    int u = Orient.sign(q, c, q, d, p, a, x, y);
    int v = Orient.sign(q, c, q, d, p, b, x, y);
    if (s != t && u != v) {
      return s * t <= 0 && u * v <= 0;
    }
    // on one line: where their spans overlap
    return s == 0 && t == 0 && spansMeet(p, a, b, q, c, d, x) && spansMeet(p, a, b, q, c, d, y);
  }

  private static boolean spansMeet(double[] p, int a, int b, double[] q, int c, int d, int axis) {
    return Math.max(p[a + axis], p[b + axis]) >= Math.min(q[c + axis], q[d + axis])
        && Math.max(q[c + axis], q[d + axis]) >= Math.min(p[a + axis], p[b + axis]);
  }

  private static boolean holds(double[] p, int a, double[] q, int b, int x, int y) {
    int s = Orient.sign(p, a, p, a + 3, q, b, x, y);
    int t = Orient.sign(p, a + 3, p, a + 6, q, b, x, y);
    int u = Orient.sign(p, a + 6, p, a, q, b, x, y);
    return s == t && t == u;
  }

  /** The distance between two triangles that share no point. */
  static double distance(double[] p, int a, double[] q, int b) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        least = Math.min(least, Near.edges(p, a + 3 * i, a + NEXT[i], q, b + 3 * j, b + NEXT[j]));
      }
    }
    for (int i = 0; i < 9; i += 3) {
      least = Math.min(least, Near.triangle(q, b + i, p, a));
      least = Math.min(least, Near.triangle(p, a + i, q, b));
    }
    return Math.sqrt(least);
  }
}
