package org.underlee.picture;

/** Cuts triangles and lines at the near plane and brings what is left to the screen. */
final class NearClip {
  /** A triangle cut by one plane has four corners at most. */
  private static final int MOST_CORNERS = 4;

  private final Projection projection;
  private final double[] kept = new double[3 * MOST_CORNERS];
  private final double[] screen = new double[3 * MOST_CORNERS];
  private int count;

  NearClip(Projection projection) {
    this.projection = projection;
  }

  /** The kept corners as x, y, depth. */
  double[] screen() {
    return screen;
  }

  /**
   * Returns how many corners are left of a face: none, three or four.
   *
   * @param view room for nine numbers
   */
  int triangle(SurfaceModel model, int face, double[] view) {
    for (int k = 0; k < 3; k++) {
      projection.toView(model.xyz, 3 * model.corners[3 * face + k], view, 3 * k);
    }
    count = 0;
    side(view, 0, 3);
    side(view, 3, 6);
    side(view, 6, 0);
    toScreen();
    return count;
  }

  /**
   * Returns whether anything is left of an edge.
   *
   * @param view room for six numbers
   */
  boolean line(SurfaceModel model, int edge, double[] view) {
    projection.toView(model.xyz, 3 * model.edgeEnds[2 * edge], view, 0);
    projection.toView(model.xyz, 3 * model.edgeEnds[2 * edge + 1], view, 3);
    count = 0;
    side(view, 0, 3);
    if (count < 2 && isKept(view, 3)) {
      keep(view, 3);
    }
    toScreen();
    return count == 2;
  }

  /** Keeps the start of a side when it is in front, and the place where it crosses the plane. */
  private void side(double[] view, int from, int to) {
    if (isKept(view, from)) {
      keep(view, from);
    }
    if (isKept(view, from) != isKept(view, to)) {
      double start = projection.beforeNear(view[from + 2]);
      double share = start / (start - projection.beforeNear(view[to + 2]));
      for (int k = 0; k < 3; k++) {
        kept[3 * count + k] = view[from + k] + share * (view[to + k] - view[from + k]);
      }
      count++;
    }
  }

  private boolean isKept(double[] view, int at) {
    return projection.beforeNear(view[at + 2]) >= 0;
  }

  private void keep(double[] view, int at) {
    System.arraycopy(view, at, kept, 3 * count, 3);
    count++;
  }

  private void toScreen() {
    for (int i = 0; i < count; i++) {
      projection.toScreen(kept, 3 * i, screen, 3 * i);
    }
  }
}
