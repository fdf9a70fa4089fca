package org.underlee.picture;

/**
 * Fills one triangle after the other. Corners are sorted by y, so that an edge shared by two
 * triangles is walked from the same end in both: no cracks and no sample drawn twice.
 */
final class TriangleFill {
  /** x and y of three corners from above to below, then the depth plane. */
  static final int FIELDS = 9;

  /** Where the depth plane begins. */
  static final int DEPTH = 6;

  private TriangleFill() {}

  /** Writes a triangle's fields; its corners in {@code p} come in any order. */
  static void put(double[] p, int a, int b, int c, DepthPlane plane, double[] fields, int o) {
    putCorners(p, a, b, c, fields, o);
    plane.put(fields, o + DEPTH);
  }

  /** Writes those fields of a triangle that are its corners'. */
  static void putCorners(double[] p, int a, int b, int c, double[] fields, int o) {
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
    fields[o] = p[low];
    fields[o + 1] = p[low + 1];
    fields[o + 2] = p[mid];
    fields[o + 3] = p[mid + 1];
    fields[o + 4] = p[high];
    fields[o + 5] = p[high + 1];
  }

  /** The number of the first row or column whose centre is at or after {@code at}. */
  static int firstCentre(double at) {
    return (int) Math.ceil(at - 0.5);
  }

  /** Draws the rows of a triangle that the layer has. */
  static void draw(Layer layer, double[] fields, int o, int argb, int id) {
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
    int end = Math.min(layer.endRow(), firstCentre(y2));
    for (int y = Math.max(layer.firstRow(), firstCentre(y0)); y < end; y++) {
      double centre = y + 0.5;
      double xa = x0 + (centre - y0) * whole;
      double xb = centre < y1 ? x0 + (centre - y0) * upper : x1 + (centre - y1) * lower;
      int left = Math.max(0, firstCentre(Math.min(xa, xb)));
      int right = Math.min(layer.width(), firstCentre(Math.max(xa, xb)));
      if (left < right) {
        double depth = fields[o + 6] + stepX * (left + 0.5) + fields[o + 8] * centre;
        layer.fillRow(y, left, right, depth, stepX, argb, id);
      }
    }
  }
}
