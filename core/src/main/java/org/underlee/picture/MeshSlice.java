package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * The cut face of a closed solid in a plane. Places are rounded to a micrometre, so that the ends
 * of neighbouring triangles' cuts meet; what is inside is told by counting crossings. A plane that
 * lies in a face of the solid may give that face or nothing.
 */
final class MeshSlice {
  private static final double ROUNDING = 1e6;
  private static final GeometryFactory JTS = new GeometryFactory();

  private final List<LineString> cuts = new ArrayList<>();

  private MeshSlice() {}

  /**
   * The face, in the y and z of a rigid frame.
   *
   * @param x the place of the plane along the frame's x
   */
  static List<Outline> of(Mesh mesh, Transform frame, double x) {
    MeshSlice slice = new MeshSlice();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      slice.cut(
          frame.toLocal(mesh.vertex(mesh.corner(t, 0))),
          frame.toLocal(mesh.vertex(mesh.corner(t, 1))),
          frame.toLocal(mesh.vertex(mesh.corner(t, 2))),
          x);
    }
    return slice.faces();
  }

  private void cut(Vec3 a, Vec3 b, Vec3 c, double x) {
    List<Coordinate> ends = new ArrayList<>();
    end(a, b, x, ends);
    end(b, c, x, ends);
    end(c, a, x, ends);
    if (ends.size() == 2 && !ends.get(0).equals2D(ends.get(1))) {
      cuts.add(JTS.createLineString(ends.toArray(new Coordinate[0])));
    }
  }

  /** A corner in the plane counts as above it, so that each line is cut once. */
  private static void end(Vec3 a, Vec3 b, double x, List<Coordinate> to) {
    if (a.x() < x != b.x() < x) {
      Vec3 p = crossing(a, b, x);
      to.add(new Coordinate(p.y(), p.z()));
    }
  }

  /** Where a line between two places of the frame, on both sides of the plane, goes through it. */
  static Vec3 crossing(Vec3 a, Vec3 b, double x) {
    Vec3 p = a.plus(b.minus(a).times((x - a.x()) / (b.x() - a.x())));
    return new Vec3(x, rounded(p.y()), rounded(p.z()));
  }

  private static double rounded(double value) {
    return Math.rint(value * ROUNDING) / ROUNDING;
  }

  private List<Outline> faces() {
    if (cuts.isEmpty()) {
      return List.of();
    }
    Polygonizer polygonizer = new Polygonizer();
    Geometry noded = UnaryUnionOp.union(cuts);
    polygonizer.add(noded);
    List<Outline> faces = new ArrayList<>();
    for (Object face : polygonizer.getPolygons()) {
      Polygon polygon = (Polygon) face;
      if (isInside(polygon.getInteriorPoint())) {
        faces.add(outline(polygon));
      }
    }
    return faces;
  }

  /** Whether a ray to the right crosses the cuts an odd number of times. */
  private boolean isInside(Point p) {
    int crossings = 0;
    for (LineString cut : cuts) {
      Envelope box = cut.getEnvelopeInternal();
      Coordinate a = cut.getCoordinateN(0);
      Coordinate b = cut.getCoordinateN(1);
      if (box.getMaxX() > p.getX() && a.y <= p.getY() != b.y <= p.getY()) {
        double at = a.x + (b.x - a.x) * (p.getY() - a.y) / (b.y - a.y);
        crossings += at > p.getX() ? 1 : 0;
      }
    }
    return crossings % 2 == 1;
  }

  private static Outline outline(Polygon polygon) {
    List<List<Vec2>> holes = new ArrayList<>();
    for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
      holes.add(ring(polygon.getInteriorRingN(i)));
    }
    return new Outline(ring(polygon.getExteriorRing()), holes);
  }

  private static List<Vec2> ring(LineString ring) {
    List<Vec2> points = new ArrayList<>();
    for (int i = 0; i + 1 < ring.getNumPoints(); i++) {
      points.add(new Vec2(ring.getCoordinateN(i).x, ring.getCoordinateN(i).y));
    }
    return points;
  }
}
