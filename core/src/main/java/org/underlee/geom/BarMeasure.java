package org.underlee.geom;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Finds the axis and section of a bar from its surface alone, however the solid was written.
 *
 * <p>Method: the axis is the direction in which most edge length runs, counting only true edges
 * (where two faces meet at an angle, so that the diagonals of triangulated flat faces have no say).
 * The section is the smallest rectangle around the bar seen along its axis.
 *
 * <p>Limits: the bar must be straight; a bar that is shorter along its own edges than across (a
 * block as tall as it is long) has no clear axis, and the longest edges win. Cost is linear in the
 * triangles, and quadratic in the corners of the section's hull.
 */
public final class BarMeasure {
  /** Two directions this near to parallel (cosine) count as one: about 0.26°. */
  private static final double SAME_DIRECTION = 0.99999;

  /**
   * Faces that turn less than this (cosine of 1°) are one flat face, drawn with some noise. The
   * facets of a round bar turn more, up to 360 of them: their long edges tell its axis.
   */
  private static final double FLAT = 0.99985;

  /** Above this a mesh is no sawn or rolled bar, and measuring it would only cost time. */
  private static final int MOST_TRIANGLES = 20_000;

  /** How much smaller a turned section must be before it is preferred to an upright one. */
  private static final double PREFER_UPRIGHT = 0.999;

  private BarMeasure() {}

  /** The box of the bar, or empty for a mesh that is flat, empty or too fine to be a bar. */
  public static Optional<OrientedBox> of(Mesh mesh) {
    if (mesh.triangleCount() < 4 || mesh.triangleCount() > MOST_TRIANGLES) {
      return Optional.empty();
    }
    return axis(mesh).map(axis -> around(mesh, axis)).filter(b -> b.width() > 0 && b.depth() > 0);
  }

  /** The tightest box with the given axis. */
  public static OrientedBox around(Mesh mesh, Vec3 axis) {
    Transform frame = sectionFrame(mesh.vertex(0), axis);
    List<Coordinate> flat = new ArrayList<>(mesh.vertexCount());
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < mesh.vertexCount(); i++) {
      Vec3 p = frame.toLocal(mesh.vertex(i));
      flat.add(new Coordinate(p.x(), p.y()));
      low = Math.min(low, p.z());
      high = Math.max(high, p.z());
    }
    Section s = smallest(flat);
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

  private static Section smallest(List<Coordinate> points) {
    Coordinate[] hull =
        new ConvexHull(points.toArray(Coordinate[]::new), new GeometryFactory())
            .getConvexHull()
            .getCoordinates();
    Section best = section(hull, new Vec2(1, 0));
    for (int i = 0; i + 1 < hull.length; i++) {
      Vec2 d = new Vec2(hull[i + 1].x - hull[i].x, hull[i + 1].y - hull[i].y);
      if (d.length() > 0) {
        Section turned = section(hull, d.times(1 / d.length()));
        best = turned.area() < best.area() * PREFER_UPRIGHT ? turned : best;
      }
    }
    return best;
  }

  private static Section section(Coordinate[] hull, Vec2 side) {
    double minA = Double.POSITIVE_INFINITY;
    double maxA = Double.NEGATIVE_INFINITY;
    double minB = Double.POSITIVE_INFINITY;
    double maxB = Double.NEGATIVE_INFINITY;
    for (Coordinate c : hull) {
      double a = c.x * side.x() + c.y * side.y();
      double b = c.y * side.x() - c.x * side.y();
      minA = Math.min(minA, a);
      maxA = Math.max(maxA, a);
      minB = Math.min(minB, b);
      maxB = Math.max(maxB, b);
    }
    double a = (minA + maxA) / 2;
    double b = (minB + maxB) / 2;
    Vec2 centre = new Vec2(a * side.x() - b * side.y(), a * side.y() + b * side.x());
    return new Section(centre, side, maxA - minA, maxB - minB);
  }

  private static Optional<Vec3> axis(Mesh mesh) {
    List<Vec3> directions = new ArrayList<>();
    List<Double> lengths = new ArrayList<>();
    for (Vec3 edge : trueEdges(mesh)) {
      double length = edge.length();
      if (length > 0) {
        add(directions, lengths, edge.times(1 / length), length);
      }
    }
    int best = -1;
    for (int i = 0; i < directions.size(); i++) {
      best = best < 0 || lengths.get(i) > lengths.get(best) * (1 + 1e-9) ? i : best;
    }
    return best < 0 ? Optional.empty() : Optional.of(directions.get(best));
  }

  private static void add(
      List<Vec3> directions, List<Double> lengths, Vec3 direction, double length) {
    for (int i = 0; i < directions.size(); i++) {
      if (Math.abs(directions.get(i).dot(direction)) > SAME_DIRECTION) {
        lengths.set(i, lengths.get(i) + length);
        return;
      }
    }
    directions.add(direction);
    lengths.add(length);
  }

  private record Edge(Vec3 vector, Vec3 normal) {}

  private record Ends(long a, long b) {}

  private static List<Vec3> trueEdges(Mesh mesh) {
    int[] place = welded(mesh);
    Map<Ends, Edge> open = new HashMap<>();
    List<Vec3> found = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.areaNormal(t);
      if (normal.length() > 0) {
        for (int k = 0; k < 3; k++) {
          meet(mesh, place, t, k, normal.unit(), open, found);
        }
      }
    }
    open.values().forEach(e -> found.add(e.vector));
    return found;
  }

  private static void meet(
      Mesh mesh, int[] place, int t, int k, Vec3 normal, Map<Ends, Edge> open, List<Vec3> found) {
    int a = place[mesh.corner(t, k)];
    int b = place[mesh.corner(t, (k + 1) % 3)];
    Ends ends = new Ends(Math.min(a, b), Math.max(a, b));
    Vec3 vector = mesh.vertex(b).minus(mesh.vertex(a));
    Edge other = open.remove(ends);
    if (other == null) {
      open.put(ends, new Edge(vector, normal));
    } else if (other.normal.dot(normal) < FLAT) {
      found.add(vector);
    }
  }

  /** For each vertex, the first vertex at the same place to a hundredth of a millimetre. */
  private static int[] welded(Mesh mesh) {
    record Cell(long x, long y, long z) {}
    Map<Cell, Integer> first = new HashMap<>();
    int[] place = new int[mesh.vertexCount()];
    Vec3 origin = mesh.vertex(0);
    for (int i = 0; i < place.length; i++) {
      Vec3 p = mesh.vertex(i).minus(origin).times(1e5);
      int own = i;
      place[i] =
          first.computeIfAbsent(
              new Cell(Math.round(p.x()), Math.round(p.y()), Math.round(p.z())), c -> own);
    }
    return place;
  }
}
