package org.underlee.geom;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * A solid seen in a frame with its z axis up: the convex outline of its plan, and the heights it
 * spans. Exact for straight bars of any section; a bent solid is taken with its hollow side filled.
 *
 * @param hull counter-clockwise or clockwise, closed (first point repeated)
 */
public record PlanShape(List<Vec2> hull, Interval heights) {
  public static PlanShape of(Mesh mesh, Transform rigidFrame) {
    List<Vec3> points = new ArrayList<>(mesh.vertexCount());
    for (int i = 0; i < mesh.vertexCount(); i++) {
      points.add(rigidFrame.toLocal(mesh.vertex(i)));
    }
    return of(points);
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
    return new PlanShape(ring, new Interval(low, high));
  }

  /** Where the line {@code x = u} cuts the plan, as stations y; empty when it passes by. */
  public Interval alongAt(double u) {
    return cut(hull, u);
  }

  /** Where the line {@code y = v} cuts the plan, as places x; empty when it passes by. */
  public Interval acrossAt(double v) {
    return cut(hull.stream().map(p -> new Vec2(p.y(), p.x())).toList(), v);
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

  private static Interval cut(List<Vec2> ring, double x) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i + 1 < ring.size(); i++) {
      Vec2 a = ring.get(i);
      Vec2 b = ring.get(i + 1);
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
