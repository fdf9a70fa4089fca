package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.geom.Vec3;

/**
 * A circular or elliptic arc {@code centre + u·cos t + v·sin t} as a polyline. The end points lie
 * on the arc; those between are moved out a little so that the sector under the polyline has the
 * same area as the true one, hence volumes and areas come out exact. A full turn gives a closed
 * ring without its first point repeated.
 *
 * @param u from the centre to {@code t = 0}, as long as the radius there
 * @param v from the centre to {@code t = 90°}
 * @param sag how far the polyline may leave the arc
 */
record Arc(Vec3 centre, Vec3 u, Vec3 v, double sag) {
  /**
   * Sides of a full circle at least: even a coarse one leaves it by less than 0.4 % of its radius.
   */
  private static final int MIN_SIDES = 32;

  /** Sides of one arc at most, however large its radius. */
  private static final int MAX_SIDES = 512;

  private static final double FULL_TURN = 2 * Math.PI;

  /** The whole circle or ellipse. */
  List<Vec3> ring() {
    // A multiple of four, so that the polyline is as symmetric as the circle.
    int sides = (sides(FULL_TURN) + 3) / 4 * 4;
    double step = FULL_TURN / sides;
    double out = Math.sqrt(step / Math.sin(step));
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < sides; i++) {
      points.add(at(i * step, out));
    }
    return points;
  }

  /**
   * Sides for a turn: a polyline of the arc's own area stands out by a twelfth of the squared step
   * at its corners, more than it falls short at its sides.
   */
  int sides(double turn) {
    double radius = Math.max(u.length(), v.length());
    double fine = turn * Math.sqrt(radius / (12 * sag));
    double coarse = turn / FULL_TURN * MIN_SIDES;
    return (int) Math.min(MAX_SIDES, Math.ceil(Math.max(fine, coarse) - 1e-9));
  }

  /** Like {@link #between}, with every point on the arc: its length is 0.04 % low at most. */
  List<Vec3> along(double from, double to) {
    int sides = Math.max(2, 2 * sides(Math.abs(to - from)));
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i <= sides; i++) {
      points.add(at(from + (to - from) * i / sides, 1));
    }
    return points;
  }

  /** From one parameter to the other, in radians; backwards when {@code to < from}. */
  List<Vec3> between(double from, double to) {
    double turn = Math.abs(to - from);
    int sides = Math.max(2, sides(turn));
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
  static double outward(double turn, int sides) {
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

  /** How far round {@code p} is from the start, forwards: between nothing and a full turn. */
  double turnTo(Vec3 p) {
    double turn = parameter(p);
    return turn > 0 ? turn : turn + FULL_TURN;
  }

  /** The arc from {@code a} through {@code b} to {@code c}; none where they are in one line. */
  static Optional<Arc> through(Vec3 a, Vec3 b, Vec3 c, double sag) {
    Vec3 ab = b.minus(a);
    Vec3 ac = c.minus(a);
    Vec3 normal = ab.cross(ac);
    double twice = normal.dot(normal);
    // Three points in line within a millionth of their distance.
    if (normal.length() <= 1e-6 * ab.length() * ac.length()) {
      return Optional.empty();
    }
    Vec3 toCentre =
        ac.times(ab.dot(ab)).minus(ab.times(ac.dot(ac))).cross(normal).times(1 / (2 * twice));
    Vec3 u = toCentre.negated();
    return Optional.of(new Arc(a.plus(toCentre), u, normal.unit().cross(u), sag));
  }
}
