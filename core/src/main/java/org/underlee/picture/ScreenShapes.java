package org.underlee.picture;

import java.util.Arrays;

/** Shapes in sample coordinates (x right, y down), of which a layer draws those in its rows. */
abstract class ScreenShapes {
  private static final int FIRST_ROOM = 64;

  /** Numbers of a shape, and where a further one's begin. */
  private final int stride;

  private int size;
  private int top = Integer.MAX_VALUE;
  private int bottom = -1;
  private int[] firstRow = new int[0];
  private int[] lastRow = new int[0];

  /** The numbers of each shape, one after the other. */
  double[] fields = new double[0];

  int[] argb = new int[0];
  int[] ids = new int[0];

  /** Holds shapes of so many numbers each. */
  ScreenShapes(int stride) {
    this.stride = stride;
  }

  /** Where the numbers of a shape are in {@link #fields}. */
  final int at(int shape) {
    return stride * shape;
  }

  /** Makes room for a further shape; gives where its numbers go. */
  final int room() {
    if (size == argb.length) {
      int more = Math.max(FIRST_ROOM, 2 * size);
      fields = Arrays.copyOf(fields, stride * more);
      argb = Arrays.copyOf(argb, more);
      ids = Arrays.copyOf(ids, more);
      firstRow = Arrays.copyOf(firstRow, more);
      lastRow = Arrays.copyOf(lastRow, more);
    }
    return at(size);
  }

  /** Keeps the shape whose numbers were put in the {@link #room}, from one row to another. */
  final void keep(int colour, int id, int from, int to) {
    argb[size] = colour;
    ids[size] = id;
    firstRow[size] = from;
    lastRow[size] = to;
    top = Math.min(top, from);
    bottom = Math.max(bottom, to);
    size++;
  }

  /** Draws, in the order of adding, what meets the layer's rows. */
  final void draw(Layer layer) {
    int end = layer.firstRow() + layer.rows();
    if (bottom < layer.firstRow() || top >= end) {
      return;
    }
    for (int i = 0; i < size; i++) {
      if (lastRow[i] >= layer.firstRow() && firstRow[i] < end) {
        draw(layer, i, Math.max(firstRow[i], layer.firstRow()), Math.min(lastRow[i], end - 1));
      }
    }
  }

  /** Draws one shape, from one of its rows in the layer to another. */
  abstract void draw(Layer layer, int shape, int from, int to);
}
