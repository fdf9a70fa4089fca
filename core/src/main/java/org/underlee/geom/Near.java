package org.underlee.geom;

/**
 * Squared distances between points, edges and triangles that are given as numbers in arrays; after
 * C. Ericson, "Real-Time Collision Detection", 2005, sections 5.1.5 and 5.1.9.
 */
final class Near {
  private Near() {}

  /** From the edge {@code a…b} to the edge {@code c…d}. */
  static double edges(double[] p, int a, int b, double[] q, int c, int d) {
    Vec3 start = at(p, a);
    Vec3 other = at(q, c);
    Vec3 along = at(p, b).minus(start);
    Vec3 beside = at(q, d).minus(other);
    Vec3 r = start.minus(other);
    double aa = along.dot(along);
    double bb = beside.dot(beside);
    double ab = along.dot(beside);
    double ar = along.dot(r);
    double br = beside.dot(r);
    double area = aa * bb - ab * ab;
    double s = area > 0 ? clamped((ab * br - ar * bb) / area) : 0;
    double t = bb > 0 ? (ab * s + br) / bb : 0;
    if (t < 0 || t > 1) {
      t = clamped(t);
      s = aa > 0 ? clamped((t * ab - ar) / aa) : 0;
    }
    Vec3 gap = r.plus(along.times(s)).minus(beside.times(t));
    return gap.dot(gap);
  }

  /** From a point to a triangle, its inside included. */
  static double triangle(double[] p, int at, double[] q, int b) {
    Vec3 point = at(p, at);
    Vec3 gap = point.minus(nearest(point, at(q, b), at(q, b + 3), at(q, b + 6)));
    return gap.dot(gap);
  }

  /** The place on a triangle that is nearest to a point. */
  static Vec3 nearest(Vec3 p, Vec3 a, Vec3 b, Vec3 c) {
    Vec3 ab = b.minus(a);
    Vec3 ac = c.minus(a);
    Vec3 normal = ab.cross(ac);
    double whole = normal.dot(normal);
    if (whole > 0) {
      Vec3 ap = p.minus(a);
      double v = normal.dot(ap.cross(ac)) / whole;
      double w = normal.dot(ab.cross(ap)) / whole;
      if (v >= 0 && w >= 0 && v + w <= 1) {
        return a.plus(ab.times(v)).plus(ac.times(w));
      }
    }
    Vec3 best = onEdge(p, a, b);
    best = nearer(p, best, onEdge(p, b, c));
    return nearer(p, best, onEdge(p, c, a));
  }

  private static Vec3 nearer(Vec3 p, Vec3 a, Vec3 b) {
    return p.distance(a) <= p.distance(b) ? a : b;
  }

  private static Vec3 onEdge(Vec3 p, Vec3 a, Vec3 b) {
    Vec3 ab = b.minus(a);
    double length = ab.dot(ab);
    return length > 0 ? a.plus(ab.times(clamped(p.minus(a).dot(ab) / length))) : a;
  }

  private static double clamped(double share) {
    return Math.max(0, Math.min(1, share));
  }

  static Vec3 at(double[] p, int i) {
    return new Vec3(p[i], p[i + 1], p[i + 2]);
  }
}
