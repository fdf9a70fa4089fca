package org.underlee.picture;

/**
 * The vertices of a model on the screen: x to the right and y down in 1/256 of a sample, and the
 * depth. A vertex behind the near plane, or too far outside the picture for whole numbers, is not
 * plain: what hangs on it is worked out from its place in space.
 */
final class ScreenPlaces {
  /** Below this a sum or difference of two places is still a whole number of 32 bits. */
  private static final double FARTHEST = 1 << 29;

  final int[] x;
  final int[] y;

  /** Not a number where the vertex is not plain. */
  final double[] depth;

  ScreenPlaces(int vertices) {
    x = new int[vertices];
    y = new int[vertices];
    depth = new double[vertices];
  }

  boolean isPlain(int vertex) {
    return !Double.isNaN(depth[vertex]);
  }

  /** Writes a vertex's place in pixels and its depth into three numbers of an array. */
  void copy(int vertex, double[] to, int at) {
    to[at] = x[vertex] * (1.0 / Projection.SUBSAMPLES);
    to[at + 1] = y[vertex] * (1.0 / Projection.SUBSAMPLES);
    to[at + 2] = depth[vertex];
  }

  /** Brings some of the vertices, from one to before another, to the screen. */
  void place(double[] xyz, Projection projection, int from, int end) {
    for (int i = from; i < end; i++) {
      double px = xyz[3 * i];
      double py = xyz[3 * i + 1];
      double pz = xyz[3 * i + 2];
      double z = projection.viewZ(px, py, pz);
      double larger = projection.magnification(z);
      double right = Math.rint(projection.screenX(projection.viewX(px, py, pz), larger));
      double down = Math.rint(projection.screenY(projection.viewY(px, py, pz), larger));
      boolean plain =
          projection.beforeNear(z) >= 0 && Math.abs(right) < FARTHEST && Math.abs(down) < FARTHEST;
      x[i] = (int) right;
      y[i] = (int) down;
      depth[i] = plain ? z * larger : Double.NaN;
    }
  }
}
