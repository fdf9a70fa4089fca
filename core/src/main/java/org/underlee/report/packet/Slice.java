package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** What an upright plane shows of a closed body: the outlines where it is cut. */
final class Slice {
  /** Places nearer than this are one: finer than any part, coarser than rounding. */
  private static final double GRID = 1e6;

  private static final GeometryFactory ON_GRID = new GeometryFactory(new PrecisionModel(GRID));

  private Slice() {}

  /**
   * The rings in which a plane cuts a body.
   *
   * @param frame of the plane: x to the right, y up, z toward the viewer; the cut is at z = 0
   * @return rings without holes: what is inside a hollow profile is drawn over by nothing
   */
  static List<Outline> of(Mesh mesh, Transform frame) {
    List<Geometry> pieces = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      List<Vec2> cut = cut(mesh, t, frame);
      if (cut.size() == 2) {
        Coordinate a = snapped(cut.get(0));
        Coordinate b = snapped(cut.get(1));
        if (!a.equals2D(b)) {
          pieces.add(ON_GRID.createLineString(new Coordinate[] {a, b}));
        }
      }
    }
    List<Outline> rings = new ArrayList<>();
    if (!pieces.isEmpty()) {
      Polygonizer polygonizer = new Polygonizer(true);
      polygonizer.add(ON_GRID.buildGeometry(pieces).union());
      // They are found in no order, and begin anywhere: put in one, so that two runs agree.
      List<Polygon> found = new ArrayList<>();
      for (Object polygon : polygonizer.getPolygons()) {
        found.add((Polygon) ((Polygon) polygon).norm());
      }
      found.sort(Geometry::compareTo);
      found.forEach(p -> rings.add(outline(p)));
    }
    return rings;
  }

  private static Coordinate snapped(Vec2 p) {
    return new Coordinate(Math.rint(p.x() * GRID) / GRID, Math.rint(p.y() * GRID) / GRID);
  }

  /** The two places where a triangle's sides go through the plane; none where it is beside it. */
  private static List<Vec2> cut(Mesh mesh, int triangle, Transform frame) {
    List<Vec2> found = new ArrayList<>(2);
    Vec3[] p = new Vec3[3];
    for (int i = 0; i < 3; i++) {
      p[i] = frame.toLocal(mesh.point(triangle, i));
    }
    for (int i = 0; i < 3; i++) {
      Vec3 a = p[i];
      Vec3 b = p[(i + 1) % 3];
      if (a.z() < 0 != b.z() < 0) {
        double share = a.z() / (a.z() - b.z());
        Vec3 at = a.plus(b.minus(a).times(share));
        found.add(new Vec2(at.x(), at.y()));
      }
    }
    return found;
  }

  private static Outline outline(Polygon polygon) {
    List<List<Vec2>> holes = new ArrayList<>();
    for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
      holes.add(ring(polygon.getInteriorRingN(i)));
    }
    return new Outline(ring(polygon.getExteriorRing()), holes);
  }

  private static List<Vec2> ring(LineString line) {
    List<Vec2> ring = new ArrayList<>();
    Coordinate[] all = line.getCoordinates();
    for (int i = 0; i + 1 < all.length; i++) {
      ring.add(new Vec2(all[i].x, all[i].y));
    }
    return ring;
  }
}
