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

  /**
   * Starts at the given rows of the picture.
   *
   * @param colour of every sample; zero for none
   */
  void start(int first, int count, int colour) {
    firstRow = first;
    rows = count;
    Arrays.fill(argb, 0, width * rows, colour);
    Arrays.fill(ids, 0, width * rows, 0);
    forgetDepth();
  }

  int firstRow() {
    return firstRow;
  }

  int endRow() {
    return firstRow + rows;
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

  /** Copies colours and ids, row by row, to where they stand in a picture as wide. */
  void copy(int[] toArgb, int[] toIds) {
    System.arraycopy(argb, 0, toArgb, firstRow * width, width * rows);
    System.arraycopy(ids, 0, toIds, firstRow * width, width * rows);
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
   * {@code other} behind, which is no more. Most lines are hidden or seen as a whole: the tests are
   * in an order that goes the same way along such a line.
   */
  void strokeSample(int x, int y, double d, double own, double other, int colour, int id) {
    int i = (y - firstRow) * width + x;
    float surface = depth[i];
    if (d + own > surface && (d + other > surface || ids[i] == id)) {
      argb[i] = colour;
      if (d > surface) {
        depth[i] = (float) d;
      }
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
    Arrays.fill(depth, 0, width * rows, Float.NEGATIVE_INFINITY);
  }
}
