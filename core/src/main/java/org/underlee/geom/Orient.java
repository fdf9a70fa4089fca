package org.underlee.geom;

import java.math.BigDecimal;

/**
 * On which side a point lies, never wrong: the sign of a determinant in doubles where its error
 * bound allows, else worked out without rounding.
 *
 * <p>Error bounds: J. R. Shewchuk, "Adaptive precision floating-point arithmetic and fast robust
 * geometric predicates", 1997, figures 8 and 14 (filters A). Coordinates below 1e-100 or above
 * 1e100 are outside of what the bounds allow for.
 */
final class Orient {
  /** Half of the distance between 1 and the next double. */
  private static final double EPSILON = 0x1p-53;

  private static final double PLANE_BOUND = (3 + 16 * EPSILON) * EPSILON;
  private static final double SPACE_BOUND = (7 + 56 * EPSILON) * EPSILON;

  private Orient() {}

  /**
   * The sign of the volume of the tetrahedron of four points, each three numbers in an array:
   * positive when {@code d} sees {@code a, b, c} clockwise; zero when the four lie in one plane.
   */
  static int sign(double[] p, int a, double[] q, int b, double[] r, int c, double[] s, int d) {
    double adx = p[a] - s[d];
    double ady = p[a + 1] - s[d + 1];
    double adz = p[a + 2] - s[d + 2];
    double bdx = q[b] - s[d];
    double bdy = q[b + 1] - s[d + 1];
    double bdz = q[b + 2] - s[d + 2];
    double cdx = r[c] - s[d];
    double cdy = r[c + 1] - s[d + 1];
    double cdz = r[c + 2] - s[d + 2];
    double bc = bdx * cdy;
    double cb = cdx * bdy;
    double ca = cdx * ady;
    double ac = adx * cdy;
    double ab = adx * bdy;
    double ba = bdx * ady;
    double det = adz * (bc - cb) + bdz * (ca - ac) + cdz * (ab - ba);
    double most =
        (Math.abs(bc) + Math.abs(cb)) * Math.abs(adz)
            + (Math.abs(ca) + Math.abs(ac)) * Math.abs(bdz)
            + (Math.abs(ab) + Math.abs(ba)) * Math.abs(cdz);
    double bound = SPACE_BOUND * most;
    if (det > bound) {
      return 1;
    }
    return det < -bound ? -1 : most == 0 ? 0 : exact(p, a, q, b, r, c, s, d);
  }

  private static int exact(
      double[] p, int a, double[] q, int b, double[] r, int c, double[] s, int d) {
    BigDecimal[] u = difference(p, a, s, d);
    BigDecimal[] v = difference(q, b, s, d);
    BigDecimal[] w = difference(r, c, s, d);
    return u[2].multiply(cross(v, w, 0, 1))
        .add(v[2].multiply(cross(w, u, 0, 1)))
        .add(w[2].multiply(cross(u, v, 0, 1)))
        .signum();
  }

  /**
   * The sign of the area of a triangle in the plane of two axes: positive when its corners run from
   * axis {@code x} to axis {@code y}.
   */
  static int sign(double[] p, int a, double[] q, int b, double[] r, int c, int x, int y) {
    double left = (p[a + x] - r[c + x]) * (q[b + y] - r[c + y]);
    double right = (p[a + y] - r[c + y]) * (q[b + x] - r[c + x]);
    double bound = PLANE_BOUND * (Math.abs(left) + Math.abs(right));
    double det = left - right;
    if (det > bound) {
      return 1;
    }
    if (det < -bound) {
      return -1;
    }
    return cross(difference(p, a, r, c), difference(q, b, r, c), x, y).signum();
  }

  private static BigDecimal[] difference(double[] p, int a, double[] q, int b) {
    BigDecimal[] all = new BigDecimal[3];
    for (int i = 0; i < 3; i++) {
      all[i] = new BigDecimal(p[a + i]).subtract(new BigDecimal(q[b + i]));
    }
    return all;
  }

  private static BigDecimal cross(BigDecimal[] u, BigDecimal[] v, int x, int y) {
    return u[x].multiply(v[y]).subtract(u[y].multiply(v[x]));
  }
}
