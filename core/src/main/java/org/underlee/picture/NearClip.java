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

  double magnification(int corner) {
    return projection.magnification(kept, 3 * corner);
  }

  /** Returns how many corners are left: none, three or four. */
  int triangle(double[] view, int a, int b, int c) {
    count = 0;
    side(view, a, b);
    side(view, b, c);
    side(view, c, a);
    toScreen();
    return count;
  }

  /** Returns whether anything is left of the line. */
  boolean line(double[] view, int a, int b) {
    count = 0;
    side(view, a, b);
    if (count < 2 && isKept(view, b)) {
      keep(view, b);
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
      double start = projection.beforeNear(view, from);
      double share = start / (start - projection.beforeNear(view, to));
      for (int k = 0; k < 3; k++) {
        kept[3 * count + k] = view[from + k] + share * (view[to + k] - view[from + k]);
      }
      count++;
    }
  }

  private boolean isKept(double[] view, int at) {
    return projection.beforeNear(view, at) >= 0;
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
