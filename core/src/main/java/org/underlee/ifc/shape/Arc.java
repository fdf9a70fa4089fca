package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec3;

/**
 * A circular or elliptic arc {@code centre + u·cos t + v·sin t} as a polyline. The end points lie
 * on the arc; those between are moved out a little so that the sector under the polyline has the
 * same area as the true one, hence volumes and areas come out exact. A full turn gives a closed
 * ring without its first point repeated.
 *
 * @param u from the centre to {@code t = 0}, as long as the radius there
 * @param v from the centre to {@code t = 90°}
 */
record Arc(Vec3 centre, Vec3 u, Vec3 v) {
  /** Sides of a full circle: the polyline leaves the circle by less than 0.5 % of its radius. */
  static final int SIDES = 32;

  private static final double FULL_TURN = 2 * Math.PI;

  /** The whole circle or ellipse. */
  List<Vec3> ring() {
    double step = FULL_TURN / SIDES;
    double out = Math.sqrt(step / Math.sin(step));
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < SIDES; i++) {
      points.add(at(i * step, out));
    }
    return points;
  }

  /** From one parameter to the other, in radians; backwards when {@code to < from}. */
  List<Vec3> between(double from, double to) {
    double turn = Math.abs(to - from);
    int sides = Math.max(2, (int) Math.ceil(turn / (FULL_TURN / SIDES) - 1e-9));
    double out = outward(turn, sides);
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i <= sides; i++) {
      boolean end = i == 0 || i == sides;
      points.add(at(from + (to - from) * i / sides, end ? 1 : out));
    }
    return points;
  }

  /**
   * The factor {@code f} for inner points that keeps the sector's area: two end triangles of {@code
   * f·s/2} and {@code sides − 2} inner ones of {@code f²·s/2}, with {@code s} the sine of a step,
   * together {@code turn/2}.
   */
  private static double outward(double turn, int sides) {
    double s = Math.sin(turn / sides);
    if (sides == 2) {
      return turn / (2 * s);
    }
    double a = (sides - 2) * s;
    return (-s + Math.sqrt(s * s + a * turn)) / a;
  }

  Vec3 at(double t, double out) {
    return centre.plus(u.times(out * Math.cos(t))).plus(v.times(out * Math.sin(t)));
  }

  /** The parameter of the point on the arc's plane nearest to {@code p}. */
  double parameter(Vec3 p) {
    Vec3 d = p.minus(centre);
    return Math.atan2(d.dot(v) / v.dot(v), d.dot(u) / u.dot(u));
  }

  /**
   * The arc from {@code a} through {@code b} to {@code c}; a straight line where they are in one.
   */
  static List<Vec3> through(Vec3 a, Vec3 b, Vec3 c) {
    Vec3 ab = b.minus(a);
    Vec3 ac = c.minus(a);
    Vec3 normal = ab.cross(ac);
    double twice = normal.dot(normal);
    // Three points in line within a millionth of their distance.
    if (normal.length() <= 1e-6 * ab.length() * ac.length()) {
      return List.of(a, b, c);
    }
    Vec3 toCentre =
        ac.times(ab.dot(ab)).minus(ab.times(ac.dot(ac))).cross(normal).times(1 / (2 * twice));
    Vec3 u = toCentre.negated();
    Arc arc = new Arc(a.plus(toCentre), u, normal.unit().cross(u));
    double turn = arc.parameter(c);
    List<Vec3> points = arc.between(0, turn > 0 ? turn : turn + FULL_TURN);
    points.set(points.size() - 1, c);
    return points;
  }
}
