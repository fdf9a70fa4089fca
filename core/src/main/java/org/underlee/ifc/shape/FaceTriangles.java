package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * Triangles of a curved face: its outline in the plane of the parameters is made a constrained
 * Delaunay triangulation, and each edge inside that stands off the surface, or whose ends look
 * different ways, is halved. Edges on the bounds stay as they are, so that neighbours fit.
 */
final class FaceTriangles {
  /** The cosine of the angle between the normals at the ends of an edge. */
  private static final double ALIKE = Math.cos(2 * Math.PI / 96);

  /** An edge is on the surface when it stands off no more than this share of its length. */
  private static final double ON_SURFACE = 1e-4;

  /** The sag of a chord over a turn of {@link #ALIKE}, as a share of its length. */
  private static final double SAG_PER_CHORD = 2 * Math.PI / 96 / 8;

  /** A straight way across a face counts as much as this many radians of a bend. */
  private static final double FLAT_SHARE = 0.1;

  /** Lines across a face, and steps on them, that tell how it bends. */
  private static final int LINES = 2;

  private static final int STEPS = 16;

  /** Where the parameters span less than this share of their usual area, they have no normal. */
  private static final double FLATTENED = 1e-6;

  /** Standing off by less than this share of the face's size is no fault: a pole has no end. */
  private static final double NOTHING = 2e-5;

  /** Points inside one face at most. */
  private static final int MAX_POINTS = 50_000;

  private final ParametricSurface surface;
  private final Vec2 scale;

  /** How much area a unit of both parameters spans in most places. */
  private final double area;

  private final DelaunayTriangles flat = new DelaunayTriangles();

  /** The point in space of each of the flat ones. */
  private final List<Vec3> points = new ArrayList<>();

  private FaceTriangles(ParametricSurface surface, FaceRing outer) {
    this.surface = surface;
    this.scale = scale(surface, outer);
    this.area = outer.uv().stream().mapToDouble(uv -> surface.normal(uv).length()).max().orElse(0);
  }

  static void add(
      ParametricSurface surface, FaceRing outer, List<FaceRing> holes, MeshBuilder builder) {
    FaceTriangles work = new FaceTriangles(surface, outer);
    boolean clockwise = Outline.signedArea(outer.uv()) < 0;
    work.cut(outer, holes);
    work.refine();
    int[] vertex = work.points.stream().mapToInt(builder::vertex).toArray();
    for (int[] t : work.flat.triangles()) {
      builder.triangle(vertex[t[0]], vertex[t[clockwise ? 2 : 1]], vertex[t[clockwise ? 1 : 2]]);
    }
  }

  /**
   * How much the surface turns for a unit of each parameter: in this measure the triangles are
   * short across a bend and long where the surface is straight.
   */
  private static Vec2 scale(ParametricSurface surface, FaceRing ring) {
    Vec2 low = ring.uv().stream().reduce((a, b) -> min(a, b)).orElseThrow();
    Vec2 high = ring.uv().stream().map(p -> p.times(-1)).reduce((a, b) -> min(a, b)).orElseThrow();
    Vec2 range = high.times(-1).minus(low);
    Vec2 u = way(surface, low, new Vec2(range.x(), 0), new Vec2(0, range.y()));
    Vec2 v = way(surface, low, new Vec2(0, range.y()), new Vec2(range.x(), 0));
    double length = u.y() + v.y();
    if (!(range.x() > 0 && range.y() > 0 && length > 0)) {
      throw new IllegalArgumentException("its bounds have no area on the surface");
    }
    return new Vec2(
        (u.x() + FLAT_SHARE * u.y() / length) / range.x(),
        (v.x() + FLAT_SHARE * v.y() / length) / range.y());
  }

  private static Vec2 min(Vec2 a, Vec2 b) {
    return new Vec2(Math.min(a.x(), b.x()), Math.min(a.y(), b.y()));
  }

  /** The most that the surface turns, and the longest way, on lines across its parameters. */
  private static Vec2 way(ParametricSurface surface, Vec2 low, Vec2 along, Vec2 across) {
    double turned = 0;
    double length = 0;
    for (int line = 0; line <= LINES; line++) {
      Vec2 start = low.plus(across.times((double) line / LINES));
      double turnedHere = 0;
      double lengthHere = 0;
      for (int i = 0; i < STEPS; i++) {
        Vec2 from = start.plus(along.times((double) i / STEPS));
        Vec2 to = start.plus(along.times((i + 1.0) / STEPS));
        Vec3 a = surface.normal(from);
        Vec3 b = surface.normal(to);
        turnedHere += Math.atan2(a.cross(b).length(), a.dot(b));
        lengthHere += surface.at(from).distance(surface.at(to));
      }
      turned = Math.max(turned, turnedHere);
      length = Math.max(length, lengthHere);
    }
    return new Vec2(turned, length);
  }

  private void cut(FaceRing outer, List<FaceRing> holes) {
    Map<Vec2, Integer> numbers = new HashMap<>();
    List<Vec2> ring = ring(outer, numbers);
    List<List<Vec2>> inner = new ArrayList<>();
    holes.forEach(hole -> inner.add(ring(hole, numbers)));
    flat.cut(new Outline(ring, inner), numbers);
  }

  private List<Vec2> ring(FaceRing ring, Map<Vec2, Integer> numbers) {
    List<Vec2> scaled = new ArrayList<>();
    for (FaceRing.Corner corner : ring.corners()) {
      Vec2 s = new Vec2(corner.uv().x() * scale.x() + 0.0, corner.uv().y() * scale.y() + 0.0);
      if (flat.vertex(s, numbers) == points.size()) {
        points.add(corner.point());
      }
      if (scaled.isEmpty() || !scaled.get(scaled.size() - 1).equals(s)) {
        scaled.add(s);
      }
    }
    while (scaled.size() > 1 && scaled.get(0).equals(scaled.get(scaled.size() - 1))) {
      scaled.remove(scaled.size() - 1);
    }
    return scaled;
  }

  private void refine() {
    Deque<Long> edges = flat.edges();
    int bound = flat.size();
    double nothing = NOTHING * size();
    while (!edges.isEmpty()) {
      long edge = edges.remove();
      if (!flat.isInside(edge)) {
        continue;
      }
      Vec3 middle = standsOff(DelaunayTriangles.from(edge), DelaunayTriangles.to(edge), nothing);
      if (middle != null) {
        if (flat.size() - bound > MAX_POINTS) {
          throw new IllegalArgumentException("it needs more than " + MAX_POINTS + " points");
        }
        points.add(middle);
        flat.halve(edge, edges);
      }
    }
  }

  private double size() {
    return points.stream().mapToDouble(p -> p.distance(points.get(0))).max().orElse(0);
  }

  private Vec2 parameters(Vec2 scaled) {
    return new Vec2(scaled.x() / scale.x(), scaled.y() / scale.y());
  }

  /** The surface's point in the middle of an edge that leaves the surface. */
  private @Nullable Vec3 standsOff(int a, int b, double nothing) {
    double length = points.get(a).distance(points.get(b));
    if (length == 0) {
      return null;
    }
    Vec3 middle = surface.at(parameters(flat.point(a).plus(flat.point(b)).times(0.5)));
    Vec3 chord = points.get(b).minus(points.get(a)).times(1 / length);
    Vec3 away = middle.minus(points.get(a));
    double off = away.minus(chord.times(away.dot(chord))).length();
    if (off <= nothing) {
      return null;
    }
    boolean bent = off > ON_SURFACE * length && !alike(a, b);
    return bent || off > SAG_PER_CHORD * length ? middle : null;
  }

  private boolean alike(int a, int b) {
    Vec3 one = surface.normal(parameters(flat.point(a)));
    Vec3 other = surface.normal(parameters(flat.point(b)));
    double flattened = FLATTENED * area;
    double lengths = one.length() * other.length();
    return Math.min(one.length(), other.length()) <= flattened || one.dot(other) >= ALIKE * lengths;
  }
}
