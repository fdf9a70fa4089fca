package org.underlee.ifc.shape;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.underlee.geom.Outline;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;

/**
 * A constrained Delaunay triangulation of a plane outline, to which points can be added on edges:
 * ear clipping, then C. L. Lawson's flips (Software for C¹ surface interpolation, 1977) until no
 * triangle's circle holds the corner across one of its sides. Edges of the outline stay.
 */
final class DelaunayTriangles {
  /** How far the triangles' area may differ from the outline's. */
  private static final double AREA_AGREES = 1e-6;

  /** Angles that together exceed half a turn by less than this are left: they may be equal. */
  private static final double COCIRCULAR = 1e-9;

  /** Flips for each edge in doubt at most; rounding could go round in circles. */
  private static final int MAX_FLIPS = 100;

  private final List<Vec2> points = new ArrayList<>();
  private final List<int[]> triangles = new ArrayList<>();

  /** The triangle that runs along a directed edge. */
  private final Map<Long, Integer> sides = new HashMap<>();

  private final Deque<Long> doubtful = new ArrayDeque<>();

  /** An edge with a triangle on both sides, and the corners across it. */
  record Edge(int from, int to, int left, int right) {}

  /**
   * The number of a point, which is the same for the same coordinates.
   *
   * @param numbers those given out so far
   */
  int vertex(Vec2 p, Map<Vec2, Integer> numbers) {
    Integer known = numbers.putIfAbsent(p, points.size());
    if (known == null) {
      points.add(p);
      return points.size() - 1;
    }
    return known;
  }

  /**
   * Cuts up an outline of points that have numbers.
   *
   * @throws IllegalArgumentException when its rings cross
   */
  void cut(Outline outline, Map<Vec2, Integer> numbers) {
    Triangulation cut = Triangulation.of(outline);
    double area = 0;
    for (int[] t : cut.triangles()) {
      int[] own = new int[3];
      for (int k = 0; k < 3; k++) {
        own[k] = numbers.getOrDefault(cut.points().get(t[k]), -1);
      }
      area += turn(own[0], own[1], own[2]) / 2;
      set(triangles.size(), own);
    }
    if (!(Math.abs(area - outline.area()) <= AREA_AGREES * outline.area())) {
      throw new IllegalArgumentException("its bounds cross on the surface");
    }
    doubtful.addAll(edges());
    flip(new ArrayDeque<>());
  }

  List<int[]> triangles() {
    return triangles;
  }

  int size() {
    return points.size();
  }

  Vec2 point(int number) {
    return points.get(number);
  }

  /** All edges, each from its lower number, in order. */
  Deque<Long> edges() {
    TreeSet<Long> edges = new TreeSet<>();
    for (long side : sides.keySet()) {
      edges.add(undirected((int) (side >>> 32), (int) side));
    }
    return new ArrayDeque<>(edges);
  }

  private static long key(int from, int to) {
    return (long) from << 32 | to;
  }

  private static long undirected(int a, int b) {
    return key(Math.min(a, b), Math.max(a, b));
  }

  static int from(long edge) {
    return (int) (edge >>> 32);
  }

  static int to(long edge) {
    return (int) edge;
  }

  /** Whether the edge is there and inside the outline. */
  boolean isInside(long edge) {
    return sides.containsKey(edge) && sides.containsKey(key(to(edge), from(edge)));
  }

  private void set(int number, int... corners) {
    if (number == triangles.size()) {
      triangles.add(corners);
    } else {
      triangles.set(number, corners);
    }
    for (int k = 0; k < 3; k++) {
      sides.put(key(corners[k], corners[(k + 1) % 3]), number);
    }
  }

  private int side(int from, int to) {
    Integer triangle = sides.get(key(from, to));
    if (triangle == null) {
      throw new IllegalStateException("no triangle from " + from + " to " + to);
    }
    return triangle;
  }

  private double turn(int a, int b, int c) {
    return points.get(b).minus(points.get(a)).cross(points.get(c).minus(points.get(a)));
  }

  private int opposite(int triangle, int from, int to) {
    for (int corner : triangles.get(triangle)) {
      if (corner != from && corner != to) {
        return corner;
      }
    }
    throw new IllegalStateException("a triangle of two corners");
  }

  /** Flips what is in doubt; edges that come in are added to {@code fresh}. */
  private void flip(Deque<Long> fresh) {
    long most = (long) MAX_FLIPS * (doubtful.size() + 1);
    while (!doubtful.isEmpty() && most-- > 0) {
      long edge = doubtful.remove();
      if (isInside(edge)) {
        flip(from(edge), to(edge), fresh);
      }
    }
    doubtful.clear();
  }

  private void flip(int a, int b, Deque<Long> fresh) {
    int left = side(a, b);
    int right = side(b, a);
    int c = opposite(left, a, b);
    int d = opposite(right, b, a);
    boolean convex = turn(c, d, b) > 0 && turn(d, c, a) > 0;
    if (!convex || !(angle(c, a, b) + angle(d, a, b) > Math.PI + COCIRCULAR)) {
      return;
    }
    sides.remove(key(a, b));
    sides.remove(key(b, a));
    set(left, c, d, b);
    set(right, d, c, a);
    fresh.add(undirected(c, d));
    doubt(a, b, c, d);
  }

  /** The four sides of the two triangles about an edge. */
  private void doubt(int a, int b, int c, int d) {
    doubtful.add(undirected(a, d));
    doubtful.add(undirected(d, b));
    doubtful.add(undirected(b, c));
    doubtful.add(undirected(c, a));
  }

  private double angle(int at, int a, int b) {
    Vec2 to = points.get(a).minus(points.get(at));
    Vec2 other = points.get(b).minus(points.get(at));
    return Math.atan2(Math.abs(to.cross(other)), to.dot(other));
  }

  /**
   * Puts a point into the middle of an edge inside.
   *
   * @param fresh where the edges that come in are added
   */
  void halve(long edge, Deque<Long> fresh) {
    int a = from(edge);
    int b = to(edge);
    int left = side(a, b);
    int right = side(b, a);
    int c = opposite(left, a, b);
    int d = opposite(right, b, a);
    int m = points.size();
    points.add(points.get(a).plus(points.get(b)).times(0.5));
    sides.remove(key(a, b));
    sides.remove(key(b, a));
    set(left, a, m, c);
    set(right, m, a, d);
    set(triangles.size(), m, b, c);
    set(triangles.size(), b, m, d);
    doubt(a, b, c, d);
    flip(fresh);
    for (int end : new int[] {a, b, c, d}) {
      fresh.add(undirected(end, m));
    }
  }
}
