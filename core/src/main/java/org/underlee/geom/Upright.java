package org.underlee.geom;

/** Questions about a solid along an upright line, answered on its triangles. */
public final class Upright {
  private Upright() {}

  /** The heights between the lowest and the highest face at a place in plan; empty beside it. */
  public static Interval heightsAt(Mesh mesh, double x, double y) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 a = mesh.point(t, 0);
      Vec3 b = mesh.point(t, 1);
      Vec3 c = mesh.point(t, 2);
      double area = cross(a, b, c.x(), c.y());
      double u = cross(b, c, x, y) / area;
      double v = cross(c, a, x, y) / area;
      double w = 1 - u - v;
      // upright faces have no area in plan, and their shares are not numbers
      if (u >= 0 && v >= 0 && w >= 0) {
        double z = u * a.z() + v * b.z() + w * c.z();
        low = Math.min(low, z);
        high = Math.max(high, z);
      }
    }
    return new Interval(low, high);
  }

  private static double cross(Vec3 from, Vec3 to, double x, double y) {
    return (to.x() - from.x()) * (y - from.y()) - (to.y() - from.y()) * (x - from.x());
  }
}
