package org.underlee.geom;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * A solid seen in a frame with its z axis up: the convex outline of its plan, and the heights it
 * spans. Cuts are exact for straight bars of any section, and for bent bars too.
 *
 * @param hull counter-clockwise or clockwise, closed (first point repeated)
 * @param bent the edges of the faces seen in plan, two points each, where the plan has a hollow
 *     side; else empty
 */
public record PlanShape(List<Vec2> hull, Interval heights, List<Vec2> bent) {
  /** A plan that fills its hull to within this share has no hollow side. */
  private static final double HOLLOW = 0.01;

  public static PlanShape of(Mesh mesh, Transform rigidFrame) {
    List<Vec3> points = new ArrayList<>(mesh.vertexCount());
    for (int i = 0; i < mesh.vertexCount(); i++) {
      points.add(rigidFrame.toLocal(mesh.vertex(i)));
    }
    PlanShape convex = of(points);
    return upwardArea(mesh, points) >= (1 - HOLLOW) * area(convex.hull)
        ? convex
        : new PlanShape(convex.hull, convex.heights, edges(mesh, points));
  }

  /** Area in plan of the faces that look up: the plan's own, or more where faces lie in layers. */
  private static double upwardArea(Mesh mesh, List<Vec3> points) {
    double up = 0;
    double down = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 a = points.get(mesh.corner(t, 0));
      Vec3 b = points.get(mesh.corner(t, 1)).minus(a);
      Vec3 c = points.get(mesh.corner(t, 2)).minus(a);
      double area = (b.x() * c.y() - b.y() * c.x()) / 2;
      up += Math.max(0, area);
      down += Math.max(0, -area);
    }
    return Math.max(up, down);
  }

  private static double area(List<Vec2> hull) {
    double area = 0;
    for (int i = 1; i + 1 < hull.size(); i++) {
      area += hull.get(i).minus(hull.get(0)).cross(hull.get(i + 1).minus(hull.get(0))) / 2;
    }
    return Math.abs(area);
  }

  private static List<Vec2> edges(Mesh mesh, List<Vec3> points) {
    List<Vec2> edges = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        Vec3 a = points.get(mesh.corner(t, k));
        Vec3 b = points.get(mesh.corner(t, (k + 1) % 3));
        edges.add(new Vec2(a.x(), a.y()));
        edges.add(new Vec2(b.x(), b.y()));
      }
    }
    return edges;
  }

  public static PlanShape of(List<Vec3> points) {
    double low = points.stream().mapToDouble(Vec3::z).min().orElse(0);
    double high = points.stream().mapToDouble(Vec3::z).max().orElse(0);
    Coordinate[] flat =
        points.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new);
    Geometry hull = new ConvexHull(flat, new GeometryFactory()).getConvexHull();
    List<Vec2> ring = new ArrayList<>();
    for (Coordinate c : hull.getCoordinates()) {
      ring.add(new Vec2(c.x, c.y));
    }
    return new PlanShape(ring, new Interval(low, high), List.of());
  }

  /** Where the line {@code x = u} cuts the plan, as stations y; empty when it passes by. */
  public Interval alongAt(double u) {
    return cut(u);
  }

  /** Where the line {@code y = v} cuts the plan, as places x; empty when it passes by. */
  public Interval acrossAt(double v) {
    return new PlanShape(turned(hull), heights, turned(bent)).cut(v);
  }

  private static List<Vec2> turned(List<Vec2> points) {
    return points.stream().map(p -> new Vec2(p.y(), p.x())).toList();
  }

  public Interval across() {
    return range(hull.stream().mapToDouble(Vec2::x).toArray());
  }

  public Interval along() {
    return range(hull.stream().mapToDouble(Vec2::y).toArray());
  }

  private static Interval range(double[] values) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      low = Math.min(low, v);
      high = Math.max(high, v);
    }
    return new Interval(low, high);
  }

  private Interval cut(double x) {
    List<Vec2> ends = bent.isEmpty() ? hull : bent;
    int step = bent.isEmpty() ? 1 : 2;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i + 1 < ends.size(); i += step) {
      Vec2 a = ends.get(i);
      Vec2 b = ends.get(i + 1);
      if (Math.min(a.x(), b.x()) <= x && Math.max(a.x(), b.x()) >= x) {
        double run = b.x() - a.x();
        double first = run == 0 ? a.y() : a.y() + (b.y() - a.y()) * (x - a.x()) / run;
        double last = run == 0 ? b.y() : first;
        low = Math.min(low, Math.min(first, last));
        high = Math.max(high, Math.max(first, last));
      }
    }
    return new Interval(low, high);
  }
}
