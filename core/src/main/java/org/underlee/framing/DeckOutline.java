package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.underlee.geom.Interval;
import org.underlee.geom.Mesh;
import org.underlee.geom.PlanGeometry;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;

/**
 * The plan of a slab or covering in a level frame: the union of its faces that look up, of which
 * the largest piece is kept.
 */
final class DeckOutline {
  /** A face within 10° of level looks up. */
  private static final double LOOKS_UP = 0.985;

  private final Polygon polygon;

  private DeckOutline(Polygon polygon) {
    this.polygon = polygon;
  }

  /** One straight edge, with the deck on its left. */
  record Edge(Vec2 from, Vec2 to) {
    double length() {
      return to.minus(from).length();
    }

    /** A unit vector away from the deck. */
    Vec2 outward() {
      Vec2 along = to.minus(from).times(1 / length());
      return new Vec2(along.y(), -along.x());
    }

    Vec2 at(double share) {
      return from.plus(to.minus(from).times(share));
    }
  }

  /** The outline in the frame's x and y; without area when no face looks up. */
  static DeckOutline of(Mesh mesh, Transform frame) {
    return new DeckOutline(largest(PlanGeometry.facesUp(mesh, frame, LOOKS_UP)));
  }

  private static Polygon largest(Geometry whole) {
    return IntStream.range(0, whole.getNumGeometries())
        .mapToObj(whole::getGeometryN)
        .filter(Polygon.class::isInstance)
        .map(Polygon.class::cast)
        .max(Comparator.comparingDouble(Polygon::getArea))
        .orElseGet(whole.getFactory()::createPolygon);
  }

  double area() {
    return polygon.getArea();
  }

  Interval across() {
    return new Interval(
        polygon.getEnvelopeInternal().getMinX(), polygon.getEnvelopeInternal().getMaxX());
  }

  /** The outer edges, counter-clockwise. */
  List<Edge> edges() {
    Coordinate[] ring = polygon.getExteriorRing().getCoordinates();
    boolean counterClockwise = org.locationtech.jts.algorithm.Orientation.isCCW(ring);
    List<Edge> edges = new ArrayList<>();
    for (int i = 0; i + 1 < ring.length; i++) {
      Vec2 a = new Vec2(ring[i].x, ring[i].y);
      Vec2 b = new Vec2(ring[i + 1].x, ring[i + 1].y);
      edges.add(counterClockwise ? new Edge(a, b) : new Edge(b, a));
    }
    return edges;
  }

  /** What is left of the outline beside the given plans, its largest piece whole with holes. */
  DeckOutline without(List<List<Vec2>> plans) {
    Geometry rest = polygon;
    for (List<Vec2> plan : plans) {
      rest = OverlayNGRobust.overlay(rest, PlanGeometry.polygon(plan), OverlayNG.DIFFERENCE);
    }
    return new DeckOutline(largest(rest));
  }

  /** Where the line {@code x = u} runs inside, as stations y in their order. */
  List<Interval> alongAt(double u) {
    if (polygon.isEmpty()) {
      return List.of();
    }
    double low = polygon.getEnvelopeInternal().getMinY() - 1;
    double high = polygon.getEnvelopeInternal().getMaxY() + 1;
    Geometry line =
        polygon
            .getFactory()
            .createLineString(new Coordinate[] {new Coordinate(u, low), new Coordinate(u, high)});
    Geometry inside = OverlayNGRobust.overlay(line, polygon, OverlayNG.INTERSECTION);
    return IntStream.range(0, inside.getNumGeometries())
        .mapToObj(inside::getGeometryN)
        .filter(piece -> piece.getLength() > 0)
        .map(Geometry::getEnvelopeInternal)
        .map(box -> new Interval(box.getMinY(), box.getMaxY()))
        .sorted(Comparator.comparingDouble(Interval::from))
        .toList();
  }
}
