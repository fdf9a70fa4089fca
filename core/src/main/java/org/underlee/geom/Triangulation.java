package org.underlee.geom;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.impl.CoordinateArraySequence;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;

/**
 * A plane region cut into triangles, counter-clockwise, whose corners are the ring points in order:
 * the outer ring first, then each hole. Ear clipping by JTS; no point is added.
 *
 * @param points all ring points
 * @param triangles three point numbers each
 */
public record Triangulation(List<Vec2> points, List<int[]> triangles) {
  public static Triangulation of(Outline outline) {
    List<Vec2> points = new ArrayList<>(outline.outer());
    outline.holes().forEach(points::addAll);
    if (points.size() == 3) {
      return new Triangulation(points, List.of(new int[] {0, 1, 2}));
    }
    if (points.size() == 4 && outline.holes().isEmpty() && isConvex(points)) {
      // most bodies of parts are plates; these are the triangles that JTS gives
      return new Triangulation(points, List.of(new int[] {0, 2, 3}, new int[] {2, 0, 1}));
    }
    GeometryFactory factory = new GeometryFactory();
    Compared.Budget budget = new Compared.Budget(points.size());
    LinearRing[] holes =
        outline.holes().stream().map(h -> ring(factory, h, budget)).toArray(LinearRing[]::new);
    Geometry cut = cut(factory.createPolygon(ring(factory, outline.outer(), budget), holes));
    Map<Vec2, Integer> numbers = new HashMap<>();
    for (int i = 0; i < points.size(); i++) {
      numbers.putIfAbsent(points.get(i), i);
    }
    List<int[]> triangles = new ArrayList<>();
    for (int i = 0; i < cut.getNumGeometries(); i++) {
      triangles.add(triangle(cut.getGeometryN(i).getCoordinates(), numbers));
    }
    return new Triangulation(points, triangles);
  }

  /** Turning left at every corner; one that goes straight on is left to JTS. */
  private static boolean isConvex(List<Vec2> ring) {
    for (int i = 0; i < ring.size(); i++) {
      Vec2 a = ring.get(i);
      Vec2 b = ring.get((i + 1) % ring.size());
      Vec2 c = ring.get((i + 2) % ring.size());
      double turn = (b.x() - a.x()) * (c.y() - b.y()) - (b.y() - a.y()) * (c.x() - b.x());
      if (!(turn > 0)) {
        return false;
      }
    }
    return true;
  }

  /**
   * JTS 1.20 joins holes to the outer ring in one list, and where a hole lies outside of the ring
   * leaves a gap in it that it then stumbles over.
   */
  private static Geometry cut(Polygon region) {
    try {
      return PolygonTriangulator.triangulate(region);
    } catch (NullPointerException e) {
      throw new IllegalArgumentException("its rings cannot be joined", e);
    }
  }

  private static int[] triangle(Coordinate[] c, Map<Vec2, Integer> numbers) {
    int[] t = new int[3];
    for (int k = 0; k < 3; k++) {
      Integer number = numbers.get(new Vec2(c[k].x, c[k].y));
      if (number == null) {
        throw new IllegalStateException("triangulation made a new point " + c[k]);
      }
      t[k] = number;
    }
    double twice = (c[1].x - c[0].x) * (c[2].y - c[0].y) - (c[1].y - c[0].y) * (c[2].x - c[0].x);
    return twice >= 0 ? t : new int[] {t[0], t[2], t[1]};
  }

  private static LinearRing ring(GeometryFactory factory, List<Vec2> ring, Compared.Budget budget) {
    Coordinate[] c = new Coordinate[ring.size() + 1];
    for (int i = 0; i < c.length; i++) {
      Vec2 p = ring.get(i % ring.size());
      c[i] = new Compared(p.x(), p.y(), budget);
    }
    return factory.createLinearRing(
        new CoordinateArraySequence(c) {
          private static final long serialVersionUID = 1;

          /** JTS makes the copies that it works on by it. */
          @Override
          public Coordinate createCoordinate() {
            return new Compared(0, 0, budget);
          }
        });
  }
}
