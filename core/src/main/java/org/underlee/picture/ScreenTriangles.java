package org.underlee.picture;

/**
 * Flat-coloured triangles in sample coordinates (x right, y down), each with a depth that is linear
 * on the screen: greater is nearer. Corners are sorted by y, so that an edge shared by two
 * triangles is walked from the same end in both: no cracks and no sample drawn twice.
 */
final class ScreenTriangles extends ScreenShapes {
  /** x, y of three corners, then the depth plane. */
  private static final int FIELDS = 9;

  private final int width;
  private final int height;

  /** Holds triangles that meet a picture of the given size in samples. */
  ScreenTriangles(int width, int height) {
    super(FIELDS);
    this.width = width;
    this.height = height;
  }

  /**
   * Whether a triangle can cover a sample. Most of a large model's do not: they are asked here
   * before anything is worked out for them.
   */
  boolean mayMeet(double[] p, int a, int b, int c) {
    double left = Math.min(p[a], Math.min(p[b], p[c]));
    double right = Math.max(p[a], Math.max(p[b], p[c]));
    double upper = Math.min(p[a + 1], Math.min(p[b + 1], p[c + 1]));
    double lower = Math.max(p[a + 1], Math.max(p[b + 1], p[c + 1]));
    return Math.max(0, firstCentre(left)) < Math.min(width, firstCentre(right))
        && Math.max(0, firstCentre(upper)) < Math.min(height, firstCentre(lower));
  }

  /** Adds a triangle that {@link #mayMeet}; its corners in {@code p} come in any order. */
  void add(double[] p, int a, int b, int c, DepthPlane plane, int colour, int id) {
    int low = a;
    int mid = b;
    int high = c;
    if (p[low + 1] > p[mid + 1]) {
      int swap = low;
      low = mid;
      mid = swap;
    }
    if (p[mid + 1] > p[high + 1]) {
      int swap = mid;
      mid = high;
      high = swap;
    }
    if (p[low + 1] > p[mid + 1]) {
      int swap = low;
      low = mid;
      mid = swap;
    }
    int from = Math.max(0, firstCentre(p[low + 1]));
    int to = Math.min(height, firstCentre(p[high + 1])) - 1;
    int o = room();
    put(p, low, o);
    put(p, mid, o + 2);
    put(p, high, o + 4);
    fields[o + 6] = plane.atOrigin();
    fields[o + 7] = plane.stepX();
    fields[o + 8] = plane.stepY();
    keep(colour, id, from, to);
  }

  private void put(double[] p, int corner, int at) {
    fields[at] = p[corner];
    fields[at + 1] = p[corner + 1];
  }

  /** The number of the first row or column whose centre is at or after {@code at}. */
  static int firstCentre(double at) {
    return (int) Math.ceil(at - 0.5);
  }

  @Override
  void draw(Layer layer, int i, int from, int to) {
    int o = at(i);
    double x0 = fields[o];
    double y0 = fields[o + 1];
    double x1 = fields[o + 2];
    double y1 = fields[o + 3];
    double x2 = fields[o + 4];
    double y2 = fields[o + 5];
    double whole = (x2 - x0) / (y2 - y0);
    double upper = y1 > y0 ? (x1 - x0) / (y1 - y0) : 0;
    double lower = y2 > y1 ? (x2 - x1) / (y2 - y1) : 0;
    double stepX = fields[o + 7];
    double stepY = fields[o + 8];
    for (int y = from; y <= to; y++) {
      double centre = y + 0.5;
      double xa = x0 + (centre - y0) * whole;
      double xb = centre < y1 ? x0 + (centre - y0) * upper : x1 + (centre - y1) * lower;
      int left = Math.max(0, firstCentre(Math.min(xa, xb)));
      int right = Math.min(width, firstCentre(Math.max(xa, xb)));
      double depth = fields[o + 6] + stepX * (left + 0.5) + stepY * centre;
      layer.fillRow(y, left, right, depth, stepX, argb[i], ids[i]);
    }
  }
}
