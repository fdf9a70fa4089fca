package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.ifc.shape.PlaneCut.Plane;

/**
 * Takes a convex region out of a closed mesh and leaves one mesh: each face loses what lies in the
 * region, and the part of the region's own surface that was inside, found by plane cuts, is put in
 * turned over. Right only when volumes add up, which {@link #outside} checks.
 */
final class ConvexCut {
  /** How far the volumes of rest and region may miss the whole's, as a share of it. */
  private static final double VOLUME_AGREES = 1e-7;

  private final List<Plane> region;
  private final double grid;
  private final CutWork work;
  private final MeshBuilder rest = new MeshBuilder();
  private final GeometryFactory factory = new GeometryFactory();

  /** Parts of the mesh's own faces that lie in a plane of the region, facing as it does. */
  private final Map<Integer, List<List<Vec3>>> opened = new HashMap<>();

  private ConvexCut(List<Plane> region, double grid, CutWork work) {
    this.region = region;
    this.grid = grid;
    this.work = work;
  }

  /**
   * The mesh outside of the region, where every plane's height is negative.
   *
   * @param inside the mesh inside of it, not empty
   * @param work what it is a part of
   * @throws IllegalStateException when the volume is not that of the mesh less that inside
   */
  static Mesh outside(Mesh mesh, List<Plane> region, Mesh inside, double grid, CutWork work) {
    work.cut(mesh.triangleCount(), 1);
    ConvexCut cut = new ConvexCut(region, grid, work);
    for (int t = 0; t < mesh.triangleCount(); t++) {
      cut.triangle(List.of(mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2)));
    }
    for (int t = 0; t < inside.triangleCount(); t++) {
      cut.cap(List.of(inside.point(t, 0), inside.point(t, 1), inside.point(t, 2)));
    }
    Mesh rest = cut.rest.mesh();
    double missing = mesh.volume() - inside.volume() - rest.volume();
    Vec3 size = mesh.bounds().size();
    double noise = grid * (size.x() * size.y() + size.y() * size.z() + size.z() * size.x());
    if (!(Math.abs(missing) <= VOLUME_AGREES * Math.abs(mesh.volume()) + noise)) {
      throw new IllegalStateException("a cut through it loses a volume of " + missing);
    }
    // Faces missing in a plane through the point that volumes are taken about do not show there.
    PlaneCut.requireClosed(rest);
    return rest;
  }

  private void triangle(List<Vec3> corners) {
    if (isThin(corners)) {
      return;
    }
    if (isBeside(corners)) {
      face(corners);
      return;
    }
    work.cut(1, region.size());
    List<Vec3> within = corners;
    int on = -1;
    for (int i = 0; i < region.size() && !within.isEmpty(); i++) {
      double[] heights = heights(within, region.get(i));
      if (isZero(heights)) {
        if (normal(corners).dot(region.get(i).normal()) < 0) {
          within = List.of();
        }
        on = i;
      } else {
        within = below(within, heights);
      }
    }
    if (within.isEmpty() || isThin(within)) {
      face(corners);
      return;
    }
    if (on >= 0) {
      opened.computeIfAbsent(on, i -> new ArrayList<>()).add(within);
    }
    less(corners, List.of(within));
  }

  /** Whether one plane has all corners on its outer side: quick, and true of most faces. */
  private boolean isBeside(List<Vec3> corners) {
    for (Plane plane : region) {
      boolean beside = true;
      for (int i = 0; beside && i < corners.size(); i++) {
        beside = plane.height(corners.get(i)) > grid;
      }
      if (beside) {
        return true;
      }
    }
    return false;
  }

  /** A face of what was inside, if it lies in a plane of the region and was made by the cut. */
  private void cap(List<Vec3> corners) {
    if (isThin(corners)) {
      return;
    }
    Vec3 normal = normal(corners);
    for (int i = 0; i < region.size(); i++) {
      Plane plane = region.get(i);
      // Twice the grid: corners were put on it after the cut. Half: no neighbour's plane is meant.
      boolean inPlane = corners.stream().allMatch(p -> Math.abs(plane.height(p)) <= 2 * grid);
      if (inPlane && normal.dot(plane.normal()) > normal.length() / 2) {
        List<Vec3> turned = List.of(corners.get(0), corners.get(2), corners.get(1));
        less(turned, opened.getOrDefault(i, List.of()));
        return;
      }
    }
  }

  private double[] heights(List<Vec3> points, Plane plane) {
    return points.stream()
        .mapToDouble(plane::height)
        .map(h -> Math.abs(h) <= grid ? 0 : h)
        .toArray();
  }

  private static boolean isZero(double[] heights) {
    for (double h : heights) {
      if (h != 0) {
        return false;
      }
    }
    return true;
  }

  /**
   * The part of a convex polygon below a plane (Sutherland and Hodgman); empty where it is flat.
   */
  private static List<Vec3> below(List<Vec3> polygon, double[] heights) {
    List<Vec3> kept = new ArrayList<>();
    boolean any = false;
    for (int i = 0; i < heights.length; i++) {
      int next = (i + 1) % heights.length;
      if (heights[i] <= 0) {
        kept.add(polygon.get(i));
        any |= heights[i] < 0;
      }
      if (heights[i] * heights[next] < 0) {
        double share = heights[i] / (heights[i] - heights[next]);
        Vec3 from = polygon.get(i);
        kept.add(from.plus(polygon.get(next).minus(from).times(share)));
      }
    }
    return any ? kept : List.of();
  }

  private boolean isThin(List<Vec3> polygon) {
    double length = 0;
    for (int i = 0; i < polygon.size(); i++) {
      length += polygon.get(i).distance(polygon.get((i + 1) % polygon.size()));
    }
    return normal(polygon).length() <= grid * length;
  }

  private static Vec3 normal(List<Vec3> polygon) {
    Vec3 sum = Vec3.ZERO;
    for (int i = 1; i + 1 < polygon.size(); i++) {
      Vec3 o = polygon.get(0);
      sum = sum.plus(polygon.get(i).minus(o).cross(polygon.get(i + 1).minus(o)));
    }
    return sum;
  }

  /** Adds a face less others in its plane. */
  private void less(List<Vec3> corners, List<List<Vec3>> others) {
    if (others.isEmpty()) {
      face(corners);
      return;
    }
    Transform frame = FlatFace.frame(corners.get(0), normal(corners));
    Geometry left = flat(corners, frame);
    for (List<Vec3> other : others) {
      left = areas(OverlayNGRobust.overlay(left, flat(other, frame), OverlayNG.DIFFERENCE));
    }
    for (int i = 0; i < left.getNumGeometries(); i++) {
      add((Polygon) left.getGeometryN(i), frame);
    }
  }

  /** Without the points, lines and slivers that polygons leave where they only touch. */
  private MultiPolygon areas(Geometry geometry) {
    List<Polygon> polygons = new ArrayList<>();
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      if (geometry.getGeometryN(i) instanceof Polygon polygon
          && polygon.getArea() > grid * polygon.getLength()) {
        polygons.add(polygon);
      }
    }
    return factory.createMultiPolygon(polygons.toArray(Polygon[]::new));
  }

  private Polygon flat(List<Vec3> points, Transform frame) {
    Coordinate[] ring = new Coordinate[points.size() + 1];
    for (int i = 0; i < ring.length; i++) {
      Vec3 p = frame.toLocal(points.get(i % points.size()));
      ring[i] = new Coordinate(p.x(), p.y());
    }
    return factory.createPolygon(ring);
  }

  private void add(Polygon polygon, Transform frame) {
    Geometry triangles = PolygonTriangulator.triangulate(polygon);
    for (int i = 0; i < triangles.getNumGeometries(); i++) {
      Coordinate[] c = triangles.getGeometryN(i).getCoordinates();
      boolean left = Orientation.index(c[0], c[1], c[2]) > 0;
      face(List.of(at(c[0], frame), at(c[left ? 1 : 2], frame), at(c[left ? 2 : 1], frame)));
    }
  }

  private static Vec3 at(Coordinate c, Transform frame) {
    return frame.apply(new Vec3(c.x, c.y, 0));
  }

  private void face(List<Vec3> triangle) {
    if (isThin(triangle)) {
      return;
    }
    int[] v = triangle.stream().mapToInt(p -> rest.vertex(snapped(p))).toArray();
    rest.triangle(v[0], v[1], v[2]);
  }

  private Vec3 snapped(Vec3 p) {
    return new Vec3(snap(p.x()), snap(p.y()), snap(p.z()));
  }

  private double snap(double c) {
    return Math.rint(c / grid) * grid;
  }
}
