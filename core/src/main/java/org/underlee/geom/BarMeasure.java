package org.underlee.geom;

import java.util.Optional;

/**
 * Finds the axis and section of a bar from its surface alone, however the solid was written.
 *
 * <p>Method: the axis is that of {@link BarAxis}; the section is a rectangle around the bar seen
 * along its axis, along the section's own edges where it has some, else the smallest. A bowed or
 * twisted bar so has a box that holds its bow and twist: {@link Silhouette} tells its section from
 * place to place.
 *
 * <p>Limits: a bar that is shorter along its own edges than across (a block as tall as it is long)
 * has no clear axis, and the longest edges win. Cost is linear in the triangles, and quadratic in
 * the corners of the section's hull.
 */
public final class BarMeasure {
  /** Above this a mesh is no sawn or rolled bar, and measuring it would only cost time. */
  private static final int MOST_TRIANGLES = 20_000;

  /** How much smaller a turned section must be before it is preferred to an upright one. */
  private static final double PREFER_UPRIGHT = 0.999;

  /** A section that fills its square to within 2 % of a circle's share is round. */
  private static final double ROUND = 0.02;

  private BarMeasure() {}

  /** The box of the bar, or empty for a mesh that is flat, empty or too fine to be a bar. */
  public static Optional<OrientedBox> of(Mesh mesh) {
    return mesh.bar();
  }

  static Optional<OrientedBox> measured(Mesh mesh) {
    if (mesh.triangleCount() < 4 || mesh.triangleCount() > MOST_TRIANGLES) {
      return Optional.empty();
    }
    return BarAxis.of(mesh).map(d -> around(mesh, d)).filter(b -> b.width() > 0 && b.depth() > 0);
  }

  /** Whether a bar's section is a full circle, told from how much of its box the solid fills. */
  public static boolean isRound(Mesh mesh, OrientedBox box) {
    if (Math.abs(box.width() - box.depth()) > ROUND * box.depth()) {
      return false;
    }
    double share = sectionArea(mesh, box) / (box.width() * box.depth());
    return Math.abs(share - Math.PI / 4) <= ROUND;
  }

  /** The section's area, as volume over length: exact for a closed mesh with square ends. */
  public static double sectionArea(Mesh mesh, OrientedBox box) {
    return Math.abs(mesh.volume()) / box.length();
  }

  private static OrientedBox around(Mesh mesh, BarAxis.Directions directions) {
    Vec3 axis = directions.axis();
    Transform frame = sectionFrame(mesh.vertex(0), axis);
    double[] flat = new double[2 * mesh.vertexCount()];
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double[] local = mesh.toLocal(frame);
    for (int i = 0; i < mesh.vertexCount(); i++) {
      flat[2 * i] = local[3 * i];
      flat[2 * i + 1] = local[3 * i + 1];
      low = Math.min(low, local[3 * i + 2]);
      high = Math.max(high, local[3 * i + 2]);
    }
    Section s = section(flat, directions.square().map(frame::directionToLocal));
    Vec3 middle = new Vec3(s.centre.x(), s.centre.y(), (low + high) / 2);
    Vec3 side = frame.direction(new Vec3(s.side.x(), s.side.y(), 0));
    Vec3 up = frame.direction(new Vec3(-s.side.y(), s.side.x(), 0));
    return upright(
        new OrientedBox(frame.apply(middle), axis, side, up, high - low, s.width, s.depth));
  }

  private static OrientedBox upright(OrientedBox b) {
    return Math.abs(b.side().z()) > Math.abs(b.up().z())
        ? new OrientedBox(b.centre(), b.axis(), b.up(), b.side(), b.length(), b.depth(), b.width())
        : b;
  }

  /** z along the axis, x level where it can be. */
  private static Transform sectionFrame(Vec3 origin, Vec3 axis) {
    Vec3 hint = Math.abs(axis.z()) < 0.99 ? axis.cross(Vec3.Z) : Vec3.X;
    return Transform.frame(origin, axis, hint);
  }

  private record Section(Vec2 centre, Vec2 side, double width, double depth) {
    double area() {
      return width * depth;
    }
  }

  /**
   * The rectangle along the section's own edges; without any, the smallest one. A steel Z has a
   * smaller one askew, along no face of it.
   */
  private static Section section(double[] points, Optional<Vec3> edges) {
    int[] hull = FlatHull.of(points);
    Section upright = section(points, hull, 1, 0);
    if (edges.isEmpty()) {
      return smallest(points, hull, upright);
    }
    double x = edges.get().x();
    double y = edges.get().y();
    double length = Math.sqrt(x * x + y * y);
    return smaller(upright, section(points, hull, x / length, y / length));
  }

  private static Section smallest(double[] points, int[] hull, Section upright) {
    Section best = upright;
    for (int i = 0; i < hull.length; i++) {
      int a = hull[i];
      int b = hull[(i + 1) % hull.length];
      double dx = points[2 * b] - points[2 * a];
      double dy = points[2 * b + 1] - points[2 * a + 1];
      double length = Math.sqrt(dx * dx + dy * dy);
      if (length > 0) {
        best = smaller(best, section(points, hull, dx / length, dy / length));
      }
    }
    return best;
  }

  private static Section smaller(Section best, Section turned) {
    return turned.area() < best.area() * PREFER_UPRIGHT ? turned : best;
  }

  /** The rectangle around the hull, one side along the unit vector (x, y). */
  private static Section section(double[] points, int[] hull, double x, double y) {
    double minA = Double.POSITIVE_INFINITY;
    double maxA = Double.NEGATIVE_INFINITY;
    double minB = Double.POSITIVE_INFINITY;
    double maxB = Double.NEGATIVE_INFINITY;
    for (int i : hull) {
      double a = points[2 * i] * x + points[2 * i + 1] * y;
      double b = points[2 * i + 1] * x - points[2 * i] * y;
      minA = Math.min(minA, a);
      maxA = Math.max(maxA, a);
      minB = Math.min(minB, b);
      maxB = Math.max(maxB, b);
    }
    double a = (minA + maxA) / 2;
    double b = (minB + maxB) / 2;
    Vec2 centre = new Vec2(a * x - b * y, a * y + b * x);
    return new Section(centre, new Vec2(x, y), maxA - minA, maxB - minB);
  }
}
