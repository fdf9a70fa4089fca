package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.noding.snap.SnappingNoder;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * The faces that close a cut whose rim does not fall into clean rings, because long edges meet
 * several short ones or rings touch: all rim lines are snapped together and cut at each other, and
 * of the cells between them those are faces that the rim winds round once.
 */
final class CapRegions {
  /** Steps of the grid: two cuts of one edge, long or in parts, come out nearer than this. */
  private static final double SNAP = 8;

  /** The grid of a face drawn with crossing rings, as a share of its size. */
  private static final double RING_GRID = 1e-9;

  private final Transform frame;
  private final double grid;
  private final GeometryFactory factory = new GeometryFactory();
  private final List<Coordinate[]> lines = new ArrayList<>();

  /**
   * Faces in the x-y plane of a frame.
   *
   * @param frame its z points to the front of the faces
   */
  CapRegions(Transform frame, double grid) {
    this.frame = frame;
    this.grid = grid;
  }

  /** The regions inside an outer ring and outside its holes, whichever way those run. */
  static CapRegions ofRings(List<Vec3> outer, List<List<Vec3>> holes) {
    Vec3 normal = FlatFace.normal(outer);
    double size = 0;
    for (Vec3 p : outer) {
      size = Math.max(size, p.distance(outer.get(0)));
    }
    CapRegions regions = new CapRegions(FlatFace.frame(outer.get(0), normal), RING_GRID * size);
    regions.ring(outer, true);
    holes.forEach(hole -> regions.ring(hole, FlatFace.normal(hole).dot(normal) < 0));
    return regions;
  }

  private void ring(List<Vec3> ring, boolean forward) {
    for (int i = 0; i < ring.size(); i++) {
      Vec3 from = ring.get(i);
      Vec3 to = ring.get((i + 1) % ring.size());
      line(forward ? from : to, forward ? to : from);
    }
  }

  /** A line of the rim, running counter-clockwise round the face. */
  void line(Vec3 from, Vec3 to) {
    Coordinate a = flat(from);
    Coordinate b = flat(to);
    if (!a.equals2D(b)) {
      lines.add(new Coordinate[] {a, b});
    }
  }

  private Coordinate flat(Vec3 p) {
    Vec3 q = frame.toLocal(p);
    return new Coordinate(q.x(), q.y());
  }

  List<CapFaces.Face> faces() {
    if (lines.isEmpty()) {
      return List.of();
    }
    LineString[] strings = lines.stream().map(factory::createLineString).toArray(LineString[]::new);
    Geometry noded =
        OverlayNG.overlay(
            factory.createMultiLineString(strings),
            factory.createMultiLineString(),
            OverlayNG.UNION,
            new SnappingNoder(SNAP * grid));
    Polygonizer polygonizer = new Polygonizer();
    polygonizer.add(noded);
    List<CapFaces.Face> faces = new ArrayList<>();
    Collection<?> cells = polygonizer.getPolygons();
    for (Object cell : cells) {
      Polygon polygon = (Polygon) cell;
      if (winding(polygon.getInteriorPoint()) > 0) {
        faces.add(face(polygon));
      }
    }
    return faces;
  }

  /** How often the rim runs round a point: the lines that cross the ray to its right, upwards. */
  private int winding(Point point) {
    int winding = 0;
    for (Coordinate[] line : lines) {
      boolean up = line[0].y <= point.getY() && line[1].y > point.getY();
      boolean down = line[1].y <= point.getY() && line[0].y > point.getY();
      int side = up || down ? Orientation.index(line[0], line[1], point.getCoordinate()) : 0;
      winding += up && side > 0 ? 1 : 0;
      winding -= down && side < 0 ? 1 : 0;
    }
    return winding;
  }

  private CapFaces.Face face(Polygon polygon) {
    List<List<Vec3>> holes = new ArrayList<>();
    for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
      holes.add(points(polygon.getInteriorRingN(i), false));
    }
    return new CapFaces.Face(points(polygon.getExteriorRing(), true), holes);
  }

  private List<Vec3> points(LinearRing ring, boolean counterClockwise) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i + 1 < ring.getNumPoints(); i++) {
      Coordinate c = ring.getCoordinateN(i);
      points.add(frame.apply(new Vec3(c.x, c.y, 0)));
    }
    if (Orientation.isCCW(ring.getCoordinates()) != counterClockwise) {
      java.util.Collections.reverse(points);
    }
    return points;
  }
}
