package org.underlee.picture;

import java.util.Arrays;

/**
 * A band of samples with colour, depth (greater is nearer) and id. An alpha of zero means that
 * nothing was drawn.
 */
final class Layer {
  private final int width;
  private final double tie;
  private final int[] argb;
  private final int[] ids;
  private final float[] depth;
  private int firstRow;
  private int rows;

  /**
   * @param tie how much nearer a surface must be to replace another: surfaces in one plane would
   *     speckle else
   */
  Layer(int width, int mostRows, double tie) {
    this.width = width;
    this.tie = tie;
    argb = new int[width * mostRows];
    ids = new int[width * mostRows];
    depth = new float[width * mostRows];
  }

  /** Starts empty at the given rows of the picture. */
  void start(int first, int count) {
    firstRow = first;
    rows = count;
    Arrays.fill(argb, 0, width * rows, 0);
    Arrays.fill(ids, 0, width * rows, 0);
    Arrays.fill(depth, 0, width * rows, Float.NEGATIVE_INFINITY);
  }

  int firstRow() {
    return firstRow;
  }

  int rows() {
    return rows;
  }

  int width() {
    return width;
  }

  int argb(int index) {
    return argb[index];
  }

  int id(int index) {
    return ids[index];
  }

  /** Fills {@code left … right - 1} of a row of the picture where it is nearer. */
  void fillRow(int y, int left, int right, double start, double step, int colour, int id) {
    int offset = (y - firstRow) * width;
    double d = start;
    for (int i = offset + left; i < offset + right; i++) {
      if (d > depth[i] + tie) {
        depth[i] = (float) d;
        argb[i] = colour;
        ids[i] = id;
      }
      d += step;
    }
  }

  /**
   * One sample of a line. It shows on its own shape's surface when less than {@code own} behind it,
   * which makes up for the surface's slope across the line's width, and on others when less than
   * {@code other} behind.
   */
  void strokeSample(int x, int y, double d, double own, double other, int colour, int id) {
    int i = (y - firstRow) * width + x;
    if (d + (ids[i] == id ? own : other) > depth[i]) {
      depth[i] = Math.max(depth[i], (float) d);
      argb[i] = colour;
    }
  }

  /** Lays what is nearer in {@code faded} over this layer, seen through by its alpha. */
  void lay(Layer faded) {
    for (int i = 0; i < width * rows; i++) {
      int over = faded.argb[i];
      if (over != 0 && faded.depth[i] > depth[i]) {
        argb[i] = Colours.mix(argb[i], over, (over >>> 24) / 255.0);
        if (ids[i] == 0) {
          ids[i] = faded.ids[i];
        }
      }
    }
  }

  /** From here on, whatever is drawn comes on top. */
  void forgetDepth() {
    Arrays.fill(depth, Float.NEGATIVE_INFINITY);
  }

  /** Gives the empty samples a colour. */
  void background(int rgb) {
    for (int i = 0; i < width * rows; i++) {
      if (argb[i] == 0) {
        argb[i] = Colours.OPAQUE | rgb;
      }
    }
  }
}
