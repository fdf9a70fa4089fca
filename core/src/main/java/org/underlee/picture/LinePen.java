package org.underlee.picture;

/**
 * Draws lines of one thickness on a layer, tested against the surfaces' depth: each is walked along
 * the axis in which it is longer, a run of samples at each step, as wide as the line cut along the
 * other axis.
 */
final class LinePen {
  private final double thickness;

  private double start;
  private double stop;
  private double across;
  private double slope;
  private double depth;
  private double depthSlope;
  private double half;

  /**
   * @param thickness of every line, in samples
   */
  LinePen(double thickness) {
    this.thickness = thickness;
  }

  /**
   * Draws what the layer has of a line.
   *
   * @param p x, y and depth of one end, then of the other
   * @param own how far it may lie behind its own shape's surface, {@code other} behind others'
   */
  void draw(Layer layer, double[] p, double own, double other, int argb, int id) {
    if (Math.abs(p[4] - p[1]) >= Math.abs(p[3] - p[0])) {
      steep(layer, p, own, other, argb, id);
    } else {
      shallow(layer, p, own, other, argb, id);
    }
  }

  private void steep(Layer layer, double[] p, double own, double other, int argb, int id) {
    int first = Math.max(layer.firstRow(), first(p[1], p[4]));
    int end = Math.min(layer.endRow(), end(p[1], p[4]));
    if (first < end) {
      walk(p, 1);
    }
    for (int y = first; y < end; y++) {
      double middle = middle(y);
      int left = Math.max(0, TriangleFill.firstCentre(middle - half));
      int right = Math.min(layer.width(), TriangleFill.firstCentre(middle + half));
      double at = depth(y);
      for (int x = left; x < right; x++) {
        layer.strokeSample(x, y, at, own, other, argb, id);
      }
    }
  }

  private void shallow(Layer layer, double[] p, double own, double other, int argb, int id) {
    int first = Math.max(0, first(p[0], p[3]));
    int end = Math.min(layer.width(), end(p[0], p[3]));
    if (first < end) {
      walk(p, 0);
    }
    for (int x = first; x < end; x++) {
      double middle = middle(x);
      int upper = Math.max(layer.firstRow(), TriangleFill.firstCentre(middle - half));
      int lower = Math.min(layer.endRow(), TriangleFill.firstCentre(middle + half));
      double at = depth(x);
      for (int y = upper; y < lower; y++) {
        layer.strokeSample(x, y, at, own, other, argb, id);
      }
    }
  }

  /** The first step of a line between two places: ends reach a little further than the line. */
  private int first(double a, double b) {
    return TriangleFill.firstCentre(Math.min(a, b) - thickness / 4);
  }

  private int end(double a, double b) {
    return TriangleFill.firstCentre(Math.max(a, b) + thickness / 4);
  }

  /** Makes ready to walk along the axis 0 for x, 1 for y. */
  private void walk(double[] p, int along) {
    int first = p[along] > p[3 + along] ? 3 : 0;
    int last = 3 - first;
    double length = p[last + along] - p[first + along];
    double inverse = length > 0 ? 1 / length : 0;
    start = p[first + along];
    stop = p[last + along];
    across = p[first + 1 - along];
    slope = (p[last + 1 - along] - across) * inverse;
    depth = p[first + 2];
    depthSlope = (p[last + 2] - depth) * inverse;
    half = thickness / 2 * Math.sqrt(1 + slope * slope);
  }

  private double middle(int at) {
    return across + slope * (at + 0.5 - start);
  }

  private double depth(int at) {
    return depth + depthSlope * (Math.max(start, Math.min(stop, at + 0.5)) - start);
  }
}
