package org.underlee.picture;

/**
 * A surface's depth as it runs over the screen.
 *
 * @param atOrigin at the upper left corner of the picture
 * @param stepX from one sample to the next to the right
 * @param stepY from one sample to the next below
 */
record DepthPlane(double atOrigin, double stepX, double stepY) {
  /** Writes its three numbers. */
  void put(double[] fields, int at) {
    fields[at] = atOrigin;
    fields[at + 1] = stepX;
    fields[at + 2] = stepY;
  }

  static DepthPlane level(double depth) {
    return new DepthPlane(depth, 0, 0);
  }

  /** Through three corners of x, y, depth; level when they lie in a line on the screen. */
  static DepthPlane through(double[] p, int a, int b, int c) {
    double ux = p[b] - p[a];
    double uy = p[b + 1] - p[a + 1];
    double vx = p[c] - p[a];
    double vy = p[c + 1] - p[a + 1];
    double area = ux * vy - vx * uy;
    if (area == 0) {
      return level(p[a + 2]);
    }
    double du = p[b + 2] - p[a + 2];
    double dv = p[c + 2] - p[a + 2];
    double stepX = (du * vy - dv * uy) / area;
    double stepY = (dv * ux - du * vx) / area;
    return new DepthPlane(p[a + 2] - stepX * p[a] - stepY * p[a + 1], stepX, stepY);
  }
}
