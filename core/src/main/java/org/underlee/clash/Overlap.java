package org.underlee.clash;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * How far two bodies that meet are in each other: the least move that parts them.
 *
 * <p>Of two convex bodies this is exact. Of others it is an estimate from below: a ball that fits
 * into both must be moved out by its width, and balls are tried between the places where the
 * surfaces cross. A sheet that is gone through has no room for a ball; that is found by an edge
 * with both ends outside, and the move is then estimated from above.
 *
 * @param measured whether the depth is exact
 * @param middle of the places where the surfaces cross
 */
record Overlap(double depth, boolean measured, Vec3 middle) {
  /** Crossing edges that are looked at; clashes of more are clashes by the first ones. */
  private static final int MOST_EDGES = 200;

  /** Places between which balls are tried, the furthest from each other. */
  private static final int PLACES = 10;

  /** Ends this much nearer than the length of an edge to the other's surface are not outside. */
  private static final double SHARE = 1e-6;

  /** What goes through a sheet this many times as aslant as it is thick runs along its face. */
  private static final double ASLANT = 4;

  /** How thick a body is itself: the least move that parts it from its double. */
  static double width(Solid a) {
    return Separation.of(a.mesh(), a.mesh()).depth();
  }

  /** Of two whose surfaces do not meet, one inside of the other. */
  static Overlap nested(Solid inner, Solid outer) {
    Separation move = Separation.of(inner.mesh(), outer.mesh());
    boolean exact = move.complete() && inner.isConvex() && outer.isConvex();
    return new Overlap(move.depth(), exact, inner.bounds().centre());
  }

  /**
   * Of two whose surfaces meet.
   *
   * @param pairs numbers of the triangles that meet, of one and of the other in turn
   */
  static Overlap of(Solid a, Solid b, int[] pairs, double tolerance) {
    List<Crossed> crossings = crossings(a, b, pairs);
    Vec3 middle = middle(crossings, a, pairs);
    if (a.isConvex() && b.isConvex()) {
      Separation move = Separation.of(a.mesh(), b.mesh());
      return new Overlap(move.depth(), move.complete(), middle);
    }
    double ball = ball(a, b, crossings, middle);
    if (ball > tolerance || !goesThrough(crossings, tolerance)) {
      return new Overlap(ball, false, middle);
    }
    return new Overlap(Math.max(ball, Separation.of(a.mesh(), b.mesh()).depth()), false, middle);
  }

  private record Edge(Vec3 from, Vec3 to, Solid other) {
    /** Whether both ends are outside of the other body, by more than what is contact. */
    boolean endsOutside(double tolerance) {
      double least = Math.max(tolerance, SHARE * from.distance(to));
      return isOutside(from, least) && isOutside(to, least);
    }

    private boolean isOutside(Vec3 end, double least) {
      return other.tree().distance(end) > least && !other.holds(end);
    }

    /** Whether it runs between two places inside the body, across it and not along a face. */
    boolean isAcross(Vec3 in, Vec3 out) {
      Vec3 p = in.plus(out).times(0.5);
      double room = 2 * other.tree().distance(p);
      boolean twice = room <= SHARE * from.distance(to); // one place, found in two triangles
      return !twice && in.distance(out) <= ASLANT * room && other.holds(p);
    }
  }

  /** An edge of one body and a place where it goes through the other's surface. */
  private record Crossed(Edge edge, Vec3 at) {}

  private static boolean goesThrough(List<Crossed> crossings, double tolerance) {
    Map<Edge, List<Vec3>> places = new LinkedHashMap<>();
    for (Crossed c : crossings) {
      places.computeIfAbsent(c.edge, e -> new ArrayList<>()).add(c.at);
    }
    return places.entrySet().stream()
        .anyMatch(e -> isThrough(e.getKey(), e.getValue()) && e.getKey().endsOutside(tolerance));
  }

  private static boolean isThrough(Edge edge, List<Vec3> places) {
    List<Vec3> sorted = new ArrayList<>(places);
    sorted.sort(Comparator.comparingDouble(edge.from::distance));
    for (int i = 1; i < sorted.size(); i++) {
      if (edge.isAcross(sorted.get(i - 1), sorted.get(i))) {
        return true;
      }
    }
    return false;
  }

  private static List<Crossed> crossings(Solid a, Solid b, int[] pairs) {
    List<Crossed> all = new ArrayList<>();
    for (int i = 0; i < pairs.length && all.size() < MOST_EDGES; i += 2) {
      cross(a.mesh(), pairs[i], b, pairs[i + 1], all);
      cross(b.mesh(), pairs[i + 1], a, pairs[i], all);
    }
    return all;
  }

  private static void cross(Mesh mesh, int t, Solid other, int face, List<Crossed> all) {
    Vec3 normal = other.mesh().areaNormal(face);
    Vec3 foot = other.mesh().point(face, 0);
    for (int i = 0; i < 3; i++) {
      Vec3 p = mesh.point(t, i);
      Vec3 q = mesh.point(t, (i + 1) % 3);
      double from = p.minus(foot).dot(normal);
      double to = q.minus(foot).dot(normal);
      if (from * to < 0) {
        Vec3 at = p.plus(q.minus(p).times(from / (from - to)));
        if (isOn(at, other.mesh(), face, normal)) {
          all.add(new Crossed(new Edge(p, q, other), at));
        }
      }
    }
  }

  private static boolean isOn(Vec3 p, Mesh mesh, int face, Vec3 normal) {
    for (int i = 0; i < 3; i++) {
      Vec3 a = mesh.point(face, i);
      Vec3 b = mesh.point(face, (i + 1) % 3);
      if (b.minus(a).cross(p.minus(a)).dot(normal) < 0) {
        return false;
      }
    }
    return true;
  }

  /** Where nothing crosses, the surfaces lie in each other: in the middle of such a triangle. */
  private static Vec3 middle(List<Crossed> crossings, Solid a, int[] pairs) {
    if (crossings.isEmpty()) {
      Mesh m = a.mesh();
      return m.point(pairs[0], 0)
          .plus(m.point(pairs[0], 1))
          .plus(m.point(pairs[0], 2))
          .times(1.0 / 3);
    }
    Vec3 sum = Vec3.ZERO;
    for (Crossed c : crossings) {
      sum = sum.plus(c.at);
    }
    return sum.times(1.0 / crossings.size());
  }

  /** The width of the greatest ball found that fits into both. */
  private static double ball(Solid a, Solid b, List<Crossed> crossings, Vec3 middle) {
    List<Vec3> places = spread(crossings, middle);
    double widest = 0;
    for (int i = 0; i < places.size(); i++) {
      for (int j = i; j < places.size(); j++) {
        Vec3 p = places.get(i).plus(places.get(j)).times(0.5);
        double radius = Math.min(a.tree().distance(p), b.tree().distance(p));
        if (2 * radius > widest && a.holds(p) && b.holds(p)) {
          widest = 2 * radius;
        }
      }
    }
    return widest;
  }

  /** Places far from each other: the next is always the one furthest from those taken. */
  private static List<Vec3> spread(List<Crossed> crossings, Vec3 middle) {
    List<Vec3> taken = new ArrayList<>(List.of(middle));
    while (taken.size() <= Math.min(PLACES, crossings.size())) {
      Vec3 furthest = middle;
      double most = -1;
      for (Crossed c : crossings) {
        double near = taken.stream().mapToDouble(c.at::distance).min().orElse(0);
        if (near > most) {
          most = near;
          furthest = c.at;
        }
      }
      taken.add(furthest);
    }
    return taken;
  }
}
