package org.underlee.picture;

/** Lines of a given width in sample coordinates, tested against the surfaces' depth. */
final class ScreenLines extends ScreenShapes {
  private static final int FIELDS = 8;

  private final int width;
  private final int height;
  private final double thickness;

  /**
   * @param width of the picture in samples (likewise height)
   * @param thickness of every line, in samples
   */
  ScreenLines(int width, int height, double thickness) {
    super(FIELDS);
    this.width = width;
    this.height = height;
    this.thickness = thickness;
  }

  /**
   * Adds a line unless it lies outside the picture.
   *
   * @param p x, y, depth of one end at {@code a} and of the other at {@code b}
   * @param own how far it may lie behind its own shape's surface, {@code other} behind others'
   */
  void add(double[] p, int a, int b, double own, double other, int colour, int id) {
    int from = Math.max(0, row(Math.min(p[a + 1], p[b + 1]) - thickness));
    int to = Math.min(height - 1, row(Math.max(p[a + 1], p[b + 1]) + thickness));
    if (from > to
        || Math.max(p[a], p[b]) < -thickness
        || Math.min(p[a], p[b]) > width + thickness) {
      return;
    }
    int o = room();
    System.arraycopy(p, a, fields, o, 3);
    System.arraycopy(p, b, fields, o + 3, 3);
    fields[o + 6] = own;
    fields[o + 7] = other;
    keep(colour, id, from, to);
  }

  private static int row(double y) {
    return (int) Math.floor(y);
  }

  @Override
  void draw(Layer layer, int i, int from, int to) {
    int o = at(i);
    if (Math.abs(fields[o + 4] - fields[o + 1]) >= Math.abs(fields[o + 3] - fields[o])) {
      steep(layer, i);
    } else {
      shallow(layer, i);
    }
  }

  /** Row by row: a run of samples about the line, as wide as its thickness cut level. */
  private void steep(Layer layer, int i) {
    Walk walk = new Walk(i, 1);
    int from = Math.max(layer.firstRow(), walk.first());
    int to = Math.min(layer.firstRow() + layer.rows(), walk.end());
    for (int y = from; y < to; y++) {
      int left = Math.max(0, walk.low(y));
      int right = Math.min(width, walk.high(y));
      for (int x = left; x < right; x++) {
        stroke(layer, i, x, y, walk.depth(y));
      }
    }
  }

  /** Column by column, only where the line passes the layer's rows. */
  private void shallow(Layer layer, int i) {
    Walk walk = new Walk(i, 0);
    int from = Math.max(0, walk.first());
    int to = Math.min(width, walk.end());
    for (int x = from; x < to; x++) {
      int upper = Math.max(layer.firstRow(), walk.low(x));
      int lower = Math.min(layer.firstRow() + layer.rows(), walk.high(x));
      for (int y = upper; y < lower; y++) {
        stroke(layer, i, x, y, walk.depth(x));
      }
    }
  }

  private void stroke(Layer layer, int i, int x, int y, double depth) {
    int o = at(i);
    layer.strokeSample(x, y, depth, fields[o + 6], fields[o + 7], argb[i], ids[i]);
  }

  /** A line walked along the axis (0 for x, 1 for y) in which it is longer. */
  private final class Walk {
    private final double start;
    private final double end;
    private final double across;
    private final double slope;
    private final double depth;
    private final double depthSlope;
    private final double half;

    Walk(int line, int along) {
      int a = at(line);
      int b = a + 3;
      boolean turned = fields[a + along] > fields[b + along];
      int first = turned ? b : a;
      int last = turned ? a : b;
      double length = fields[last + along] - fields[first + along];
      double inverse = length > 0 ? 1 / length : 0;
      start = fields[first + along];
      end = fields[last + along];
      across = fields[first + 1 - along];
      slope = (fields[last + 1 - along] - across) * inverse;
      depth = fields[first + 2];
      depthSlope = (fields[last + 2] - depth) * inverse;
      half = thickness / 2 * Math.sqrt(1 + slope * slope);
    }

    int first() {
      return ScreenTriangles.firstCentre(start - thickness / 4);
    }

    int end() {
      return ScreenTriangles.firstCentre(end + thickness / 4);
    }

    int low(int at) {
      return ScreenTriangles.firstCentre(across + slope * (at + 0.5 - start) - half);
    }

    int high(int at) {
      return ScreenTriangles.firstCentre(across + slope * (at + 0.5 - start) + half);
    }

    double depth(int at) {
      return depth + depthSlope * (Math.max(start, Math.min(end, at + 0.5)) - start);
    }
  }
}
