package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * A bound of a face in the parameters of its surface, followed round without jumps.
 *
 * @param turns how often the bound goes round the surface in u: it does not close in the plane of
 *     the parameters unless this is nothing
 */
record FaceRing(List<Corner> corners, int turns) {
  /** A point with its parameters. */
  record Corner(Vec2 uv, Vec3 point) {
    Corner shifted(double u, double v) {
      return new Corner(new Vec2(uv.x() + u, uv.y() + v), point);
    }
  }

  /** Points nearer to a pole than this share of the bound's size are on it. */
  private static final double AT_POLE = 1e-7;

  /** Points of a pole that a bound passes, for each span of u. */
  private static final int POLE_STEPS = 64;

  static FaceRing of(ParametricSurface surface, List<Vec3> ring) {
    List<Corner> corners = new ArrayList<>();
    List<Vec3> open = startingOffPoles(surface, ring);
    Vec2 last = new Vec2(Double.NaN, Double.NaN);
    double pole = Double.NaN;
    for (Vec3 p : open) {
      double at = poleAt(surface, p, ring);
      if (!Double.isNaN(at)) {
        pole = at;
        continue;
      }
      Vec2 uv = nearest(surface, surface.parameters(p, last), last);
      if (!Double.isNaN(pole)) {
        corners.addAll(alongPole(surface, pole, last.x(), uv.x()));
        pole = Double.NaN;
      }
      corners.add(new Corner(uv, p));
      last = uv;
    }
    if (corners.isEmpty()) {
      throw new IllegalArgumentException("a bound of a face is a single point");
    }
    Vec2 first = corners.get(0).uv();
    Vec2 closing = nearest(surface, first, last);
    if (!Double.isNaN(pole)) {
      corners.addAll(alongPole(surface, pole, last.x(), closing.x()));
    }
    double period = surface.uPeriod();
    int turns = period > 0 ? (int) Math.round((closing.x() - first.x()) / period) : 0;
    return new FaceRing(corners, turns);
  }

  private static List<Vec3> startingOffPoles(ParametricSurface surface, List<Vec3> ring) {
    for (int i = 0; i < ring.size(); i++) {
      double at = poleAt(surface, ring.get(i), ring);
      if (Double.isNaN(at)) {
        List<Vec3> turned = new ArrayList<>(ring.subList(i, ring.size()));
        turned.addAll(ring.subList(0, i));
        return turned;
      }
    }
    return ring;
  }

  /** The v of the pole that the point is on, else no number. */
  private static double poleAt(ParametricSurface surface, Vec3 p, List<Vec3> ring) {
    for (double pole : surface.poles()) {
      Vec3 tip = surface.at(new Vec2(0, pole));
      double size = Math.max(tip.distance(ring.get(0)), tip.distance(ring.get(ring.size() / 2)));
      if (tip.distance(p) <= AT_POLE * size) {
        return pole;
      }
    }
    return Double.NaN;
  }

  /** Corners at a pole from one u to another, all of them the same point. */
  static List<Corner> alongPole(ParametricSurface surface, double pole, double from, double to) {
    int steps = Math.max(1, (int) Math.ceil(Math.abs(to - from) * POLE_STEPS / turn(surface)));
    Vec3 tip = surface.at(new Vec2(from, pole));
    List<Corner> corners = new ArrayList<>();
    for (int i = 0; i <= steps; i++) {
      corners.add(new Corner(new Vec2(from + (to - from) * i / steps, pole), tip));
    }
    return corners;
  }

  private static double turn(ParametricSurface surface) {
    return surface.uPeriod() > 0 ? surface.uPeriod() : surface.span().x();
  }

  /** The same place with full turns added so that it is near to the one before. */
  private static Vec2 nearest(ParametricSurface surface, Vec2 uv, Vec2 last) {
    if (Double.isNaN(last.x())) {
      return uv;
    }
    return new Vec2(
        nearest(uv.x(), last.x(), surface.uPeriod()), nearest(uv.y(), last.y(), surface.vPeriod()));
  }

  static double nearest(double t, double last, double period) {
    return period > 0 ? t + period * Math.round((last - t) / period) : t;
  }

  FaceRing shifted(double u, double v) {
    return new FaceRing(corners.stream().map(c -> c.shifted(u, v)).toList(), turns);
  }

  /** The other way round. */
  FaceRing reversed() {
    List<Corner> back = new ArrayList<>(corners);
    java.util.Collections.reverse(back);
    return new FaceRing(back, -turns);
  }

  /** Starting with another corner, which keeps its parameters. */
  FaceRing startingAt(int start, double period) {
    List<Corner> turned = new ArrayList<>(corners.subList(start, corners.size()));
    corners.subList(0, start).forEach(c -> turned.add(c.shifted(turns * period, 0)));
    return new FaceRing(turned, turns);
  }

  List<Vec2> uv() {
    return corners.stream().map(Corner::uv).toList();
  }

  double middle(boolean inU) {
    return corners.stream().mapToDouble(c -> inU ? c.uv().x() : c.uv().y()).average().orElse(0);
  }
}
