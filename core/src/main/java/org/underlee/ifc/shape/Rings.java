package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/** Closed rings of plane points, without repeated points. */
final class Rings {
  /** Points nearer than this share of the ring's size are one: below any drawing accuracy. */
  private static final double SAME = 1e-9;

  /** A ring that crosses itself is taken for its largest cell where that is nearly all of it. */
  private static final double MOST = 0.999;

  private Rings() {}

  /** The ring of a curve's points, seen along z. */
  static List<Vec2> ring(StepInstance owner, List<Vec3> points) {
    double size = 0;
    for (Vec3 p : points) {
      size = Math.max(size, p.distance(points.get(0)));
    }
    List<Vec2> ring = new ArrayList<>();
    for (Vec3 p : points) {
      Vec2 q = new Vec2(p.x(), p.y());
      if (ring.isEmpty() || apart(q, ring.get(ring.size() - 1), size)) {
        ring.add(q);
      }
    }
    while (ring.size() > 1 && !apart(ring.get(0), ring.get(ring.size() - 1), size)) {
      ring.remove(ring.size() - 1);
    }
    requireArea(owner, ring, size);
    return uncrossed(ring);
  }

  /** Without the tiny loops that a ring makes where its end runs over its start. */
  private static List<Vec2> uncrossed(List<Vec2> ring) {
    Coordinate[] line = new Coordinate[ring.size() + 1];
    for (int i = 0; i < line.length; i++) {
      Vec2 p = ring.get(i % ring.size());
      line[i] = new Coordinate(p.x(), p.y());
    }
    Polygon polygon = new GeometryFactory().createPolygon(line);
    if (polygon.isValid()) {
      return ring;
    }
    Geometry cells = GeometryFixer.fix(polygon);
    for (int i = 0; i < cells.getNumGeometries(); i++) {
      Polygon cell = (Polygon) cells.getGeometryN(i);
      if (cell.getNumInteriorRing() == 0 && cell.getArea() >= MOST * cells.getArea()) {
        return points(cell);
      }
    }
    return ring;
  }

  private static List<Vec2> points(Polygon cell) {
    List<Vec2> points = new ArrayList<>();
    Coordinate[] ring = cell.getExteriorRing().getCoordinates();
    for (int i = 0; i + 1 < ring.length; i++) {
      points.add(new Vec2(ring[i].x, ring[i].y));
    }
    return points;
  }

  private static boolean apart(Vec2 a, Vec2 b, double size) {
    return a.minus(b).length() > SAME * size;
  }

  private static void requireArea(StepInstance owner, List<Vec2> ring, double size) {
    if (ring.size() < 3 || Math.abs(Outline.signedArea(ring)) <= SAME * size * size) {
      throw Unreadable.degenerate(owner, "the outline encloses no area");
    }
  }
}
