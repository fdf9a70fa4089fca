package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec3;

/** Corners replaced by arcs that touch both of their sides. */
final class Fillets {
  /** Corners that turn by less than this many radians have no room for an arc. */
  private static final double STRAIGHT = 1e-6;

  private Fillets() {}

  /** A corner of a ring with the radius that rounds it; nothing for a sharp one. */
  record Corner(double x, double y, double radius) {
    Vec3 point() {
      return new Vec3(x, y, 0);
    }
  }

  /** A ring whose rounded corners keep the area under their arcs. */
  static List<Vec3> ring(List<Corner> corners, double sag) {
    List<Vec3> ring = new ArrayList<>();
    int n = corners.size();
    for (int i = 0; i < n; i++) {
      Corner c = corners.get(i);
      Vec3 before = corners.get((i + n - 1) % n).point();
      Vec3 after = corners.get((i + 1) % n).point();
      ring.addAll(rounded(before, c.point(), after, c.radius(), sag, false));
    }
    return ring;
  }

  /** An open path with every corner rounded, its points on the arcs. */
  static List<Vec3> path(List<Vec3> points, double radius, double sag) {
    List<Vec3> path = new ArrayList<>(List.of(points.get(0)));
    for (int i = 1; i + 1 < points.size(); i++) {
      path.addAll(rounded(points.get(i - 1), points.get(i), points.get(i + 1), radius, sag, true));
    }
    path.add(points.get(points.size() - 1));
    return path;
  }

  private static List<Vec3> rounded(
      Vec3 before, Vec3 at, Vec3 after, double radius, double sag, boolean onArc) {
    if (!(radius > 0) || before.distance(at) == 0 || after.distance(at) == 0) {
      return List.of(at);
    }
    Vec3 in = at.minus(before).unit();
    Vec3 out = after.minus(at).unit();
    double turn = Math.atan2(in.cross(out).length(), in.dot(out));
    if (turn < STRAIGHT || turn > Math.PI - STRAIGHT) {
      return List.of(at);
    }
    double back = radius * Math.tan(turn / 2);
    Vec3 start = at.minus(in.times(back));
    Vec3 toCentre = out.minus(in.times(in.dot(out))).unit().times(radius);
    Arc arc = new Arc(start.plus(toCentre), toCentre.negated(), in.times(radius), sag);
    return onArc ? arc.along(0, turn) : arc.between(0, turn);
  }
}
