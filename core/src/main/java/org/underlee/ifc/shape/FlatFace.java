package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * Cuts a plane polygon in space into triangles: seen along its normal (Newell's method), it is a
 * plane region like any other. Convex faces, nearly all of them, take a short way.
 */
final class FlatFace {
  /** How far the triangles' area may differ from the polygon's before the polygon is unsound. */
  private static final double AREA_AGREES = 1e-6;

  /** Below this share of the squared size a polygon has no area and no normal. */
  private static final double NO_AREA = 1e-12;

  /** A corner that turns back by less than this many radians is straight. */
  private static final double STRAIGHT = 1e-9;

  private FlatFace() {}

  /**
   * Triangles as vertex numbers, with the turning sense of the outer ring. A polygon without holes
   * that crosses itself comes back as a fan, which still bounds the right volume.
   *
   * @throws IllegalArgumentException when a polygon with holes cannot be cut up
   */
  static List<int[]> triangles(List<Vec3> points, int[] outer, List<int[]> holes) {
    if (outer.length == 3 && holes.isEmpty()) {
      return List.of(outer);
    }
    Vec3 normal = normal(points, outer);
    double size = points.get(outer[0]).distance(points.get(outer[outer.length / 2]));
    if (!(normal.length() > NO_AREA * size * size)) {
      return List.of();
    }
    Transform frame = frame(points.get(outer[0]), normal);
    List<Vec2> ring = project(points, outer, frame);
    if (holes.isEmpty() && isConvex(ring)) {
      return fan(outer);
    }
    return cut(points, frame, outer, ring, holes);
  }

  private static List<int[]> cut(
      List<Vec3> points, Transform frame, int[] outer, List<Vec2> ring, List<int[]> holes) {
    List<List<Vec2>> inner = new ArrayList<>();
    int[] all = outer;
    for (int[] hole : holes) {
      int[] clockwise = hole;
      if (Outline.signedArea(project(points, hole, frame)) > 0) {
        clockwise = reversed(hole);
      }
      inner.add(project(points, clockwise, frame));
      int[] joined = Arrays.copyOf(all, all.length + clockwise.length);
      System.arraycopy(clockwise, 0, joined, all.length, clockwise.length);
      all = joined;
    }
    List<int[]> cut = sound(new Outline(ring, inner), all);
    if (!cut.isEmpty()) {
      return cut;
    }
    if (holes.isEmpty()) {
      return fan(outer);
    }
    throw new IllegalArgumentException("a face with holes has edges that cross");
  }

  /** The triangles, or none when they do not cover the outline. */
  private static List<int[]> sound(Outline outline, int[] vertices) {
    try {
      Triangulation flat = Triangulation.of(outline);
      double area = 0;
      List<int[]> triangles = new ArrayList<>();
      for (int[] t : flat.triangles()) {
        Vec2 a = flat.points().get(t[0]);
        area += flat.points().get(t[1]).minus(a).cross(flat.points().get(t[2]).minus(a)) / 2;
        triangles.add(new int[] {vertices[t[0]], vertices[t[1]], vertices[t[2]]});
      }
      boolean covers = Math.abs(area - outline.area()) <= AREA_AGREES * outline.area();
      return covers ? triangles : List.of();
    } catch (IllegalStateException | IllegalArgumentException e) {
      return List.of();
    }
  }

  static List<int[]> fan(int[] ring) {
    List<int[]> triangles = new ArrayList<>();
    for (int i = 1; i + 1 < ring.length; i++) {
      triangles.add(new int[] {ring[0], ring[i], ring[i + 1]});
    }
    return triangles;
  }

  static boolean isConvex(List<Vec2> ring) {
    int n = ring.size();
    double turned = 0;
    for (int i = 0; i < n; i++) {
      Vec2 a = ring.get((i + 1) % n).minus(ring.get(i));
      Vec2 b = ring.get((i + 2) % n).minus(ring.get((i + 1) % n));
      double turn = Math.atan2(a.cross(b), a.dot(b));
      if (turn < -STRAIGHT) {
        return false;
      }
      turned += turn;
    }
    // A star turns left all the way too, but more than once round.
    return turned < 3 * Math.PI;
  }

  private static Vec3 normal(List<Vec3> points, int[] ring) {
    Vec3 o = points.get(ring[0]);
    Vec3 sum = Vec3.ZERO;
    for (int i = 1; i + 1 < ring.length; i++) {
      sum = sum.plus(points.get(ring[i]).minus(o).cross(points.get(ring[i + 1]).minus(o)));
    }
    return sum;
  }

  /** Square to the ring, twice its area long. */
  static Vec3 normal(List<Vec3> ring) {
    return normal(ring, java.util.stream.IntStream.range(0, ring.size()).toArray());
  }

  /** A frame with the given z; which way x points does not matter. */
  static Transform frame(Vec3 origin, Vec3 normal) {
    Vec3 n = normal.unit();
    return Transform.frame(origin, n, Math.abs(n.x()) < 0.5 ? Vec3.X : Vec3.Y);
  }

  private static List<Vec2> project(List<Vec3> points, int[] ring, Transform frame) {
    return Arrays.stream(ring)
        .mapToObj(v -> frame.toLocal(points.get(v)))
        .map(p -> new Vec2(p.x(), p.y()))
        .toList();
  }

  private static int[] reversed(int[] ring) {
    int[] back = new int[ring.length];
    for (int i = 0; i < ring.length; i++) {
      back[i] = ring[ring.length - 1 - i];
    }
    return back;
  }
}
