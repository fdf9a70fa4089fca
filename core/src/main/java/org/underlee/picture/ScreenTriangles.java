package org.underlee.picture;

import java.util.Arrays;

/**
 * Flat-coloured triangles in sample coordinates (x right, y down), each with a depth that is linear
 * on the screen: greater is nearer. A layer draws those in its rows.
 */
final class ScreenTriangles {
  private static final int FIRST_ROOM = 64;

  private final int width;
  private final int height;
  private int size;
  private double[] fields = new double[0];
  private int[] argb = new int[0];
  private int[] firstRow = new int[0];
  private int[] endRow = new int[0];

  /** Holds triangles that meet a picture of the given size in samples. */
  ScreenTriangles(int width, int height) {
    this.width = width;
    this.height = height;
  }

  boolean isEmpty() {
    return size == 0;
  }

  /** Adds a triangle unless it covers no sample; x and y of its corners come in any order. */
  void add(double[] p, DepthPlane plane, int colour) {
    int left = TriangleFill.firstCentre(Math.min(p[0], Math.min(p[2], p[4])));
    int right = TriangleFill.firstCentre(Math.max(p[0], Math.max(p[2], p[4])));
    int upper = TriangleFill.firstCentre(Math.min(p[1], Math.min(p[3], p[5])));
    int lower = TriangleFill.firstCentre(Math.max(p[1], Math.max(p[3], p[5])));
    if (Math.max(0, left) < Math.min(width, right)
        && Math.max(0, upper) < Math.min(height, lower)) {
      makeRoom();
      TriangleFill.put(p, 0, 2, 4, plane, fields, TriangleFill.FIELDS * size);
      argb[size] = colour;
      firstRow[size] = upper;
      endRow[size] = lower;
      size++;
    }
  }

  private void makeRoom() {
    if (size == argb.length) {
      int more = Math.max(FIRST_ROOM, 2 * size);
      fields = Arrays.copyOf(fields, TriangleFill.FIELDS * more);
      argb = Arrays.copyOf(argb, more);
      firstRow = Arrays.copyOf(firstRow, more);
      endRow = Arrays.copyOf(endRow, more);
    }
  }

  /** Draws, in the order of adding, what meets the layer's rows; none can be picked. */
  void draw(Layer layer) {
    for (int i = 0; i < size; i++) {
      if (endRow[i] > layer.firstRow() && firstRow[i] < layer.endRow()) {
        TriangleFill.draw(layer, fields, TriangleFill.FIELDS * i, argb[i], 0);
      }
    }
  }
}
