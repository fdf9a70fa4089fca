package org.underlee.geom;

import java.util.ArrayList;
import java.util.List;

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
    double[] flat = new double[2 * mesh.vertexCount()];
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double[] local = mesh.toLocal(rigidFrame);
    for (int i = 0; i < mesh.vertexCount(); i++) {
      flat[2 * i] = local[3 * i];
      flat[2 * i + 1] = local[3 * i + 1];
      low = Math.min(low, local[3 * i + 2]);
      high = Math.max(high, local[3 * i + 2]);
    }
    List<Vec2> hull = hull(flat);
    boolean hollow = upwardArea(mesh, flat) < (1 - HOLLOW) * area(hull);
    return new PlanShape(hull, new Interval(low, high), hollow ? edges(mesh, flat) : List.of());
  }

  public static PlanShape of(List<Vec3> points) {
    double[] flat = new double[2 * points.size()];
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < points.size(); i++) {
      flat[2 * i] = points.get(i).x();
      flat[2 * i + 1] = points.get(i).y();
      low = Math.min(low, points.get(i).z());
      high = Math.max(high, points.get(i).z());
    }
    return new PlanShape(hull(flat), new Interval(low, high), List.of());
  }

  private static List<Vec2> hull(double[] flat) {
    int[] corners = FlatHull.of(flat);
    List<Vec2> ring = new ArrayList<>(corners.length + 1);
    for (int i = 0; i <= corners.length; i++) {
      int c = corners[i % corners.length];
      ring.add(new Vec2(flat[2 * c], flat[2 * c + 1]));
    }
    return ring;
  }

  /** Area in plan of the faces that look up: the plan's own, or more where faces lie in layers. */
  private static double upwardArea(Mesh mesh, double[] flat) {
    double up = 0;
    double down = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int a = 2 * mesh.corner(t, 0);
      int b = 2 * mesh.corner(t, 1);
      int c = 2 * mesh.corner(t, 2);
      double area =
          ((flat[b] - flat[a]) * (flat[c + 1] - flat[a + 1])
                  - (flat[b + 1] - flat[a + 1]) * (flat[c] - flat[a]))
              / 2;
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

  private static List<Vec2> edges(Mesh mesh, double[] flat) {
    List<Vec2> edges = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int a = 2 * mesh.corner(t, k);
        int b = 2 * mesh.corner(t, (k + 1) % 3);
        edges.add(new Vec2(flat[a], flat[a + 1]));
        edges.add(new Vec2(flat[b], flat[b + 1]));
      }
    }
    return edges;
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
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Vec2 p : hull) {
      low = Math.min(low, p.x());
      high = Math.max(high, p.x());
    }
    return new Interval(low, high);
  }

  public Interval along() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Vec2 p : hull) {
      low = Math.min(low, p.y());
      high = Math.max(high, p.y());
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
