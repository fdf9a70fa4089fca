package org.underlee.drainage;

import java.util.Arrays;

/**
 * Sorts the faces over one place into layers: what each piece takes of the height. A sweep asks it
 * once for every column, so it keeps its arrays.
 */
final class Stacker {
  /** More than lie over most places; the arrays grow where it is not enough. */
  private static final int USUAL = 16;

  private Facet[] faces = new Facet[USUAL];
  private double[] heights = new double[USUAL];
  private int count;

  private Facet[] tops = new Facet[USUAL];
  private double[] topAt = new double[USUAL];
  private double[] bottomAt = new double[USUAL];
  private int found;

  void clear() {
    count = 0;
  }

  /**
   * Keeps the faces by piece, then from the top down; of two at one height the upper side first.
   */
  void add(Facet face, double height) {
    if (count == faces.length) {
      faces = Arrays.copyOf(faces, 2 * count);
      heights = Arrays.copyOf(heights, 2 * count);
    }
    int at = count++;
    while (at > 0 && isBefore(face, height, faces[at - 1], heights[at - 1])) {
      faces[at] = faces[at - 1];
      heights[at] = heights[at - 1];
      at--;
    }
    faces[at] = face;
    heights[at] = height;
  }

  private static boolean isBefore(Facet a, double heightA, Facet b, double heightB) {
    if (a.piece() != b.piece()) {
      return a.piece() < b.piece();
    }
    return heightA == heightB ? a.up() && !b.up() : heightA > heightB;
  }

  /** The layers from the highest down. */
  Layer[] layers(Column column) {
    tops = tops.length < count ? new Facet[faces.length] : tops;
    topAt = topAt.length < count ? new double[faces.length] : topAt;
    bottomAt = bottomAt.length < count ? new double[faces.length] : bottomAt;
    found = 0;
    int i = 0;
    while (i < count) {
      i = faces[i].up() ? solid(i) : i + 1;
    }
    Layer[] layers = new Layer[found];
    for (int k = 0; k < found; k++) {
      layers[k] = new Layer(column, k, tops[k], topAt[k], bottomAt[k]);
    }
    return layers;
  }

  /** Goes from a piece's upper face down to where it ends; solids of it that touch are one. */
  private int solid(int first) {
    int depth = 1;
    double bottom = heights[first];
    int i = first + 1;
    while (i < count && faces[i].piece() == faces[first].piece()) {
      if (depth == 0 && bottom - heights[i] > WaterRules.TOUCH) {
        break;
      }
      depth += faces[i].up() ? 1 : -1;
      bottom = heights[i++];
    }
    keep(faces[first], heights[first], bottom);
    return i;
  }

  private void keep(Facet top, double height, double bottom) {
    int at = found++;
    while (at > 0 && topAt[at - 1] < height) {
      tops[at] = tops[at - 1];
      topAt[at] = topAt[at - 1];
      bottomAt[at] = bottomAt[at - 1];
      at--;
    }
    tops[at] = top;
    topAt[at] = height;
    bottomAt[at] = bottom;
  }
}
