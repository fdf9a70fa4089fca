package org.underlee.picture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * What of the rain stays no outlet's: open deck, hatched, and places where it gets through, with
 * the way from where it lands.
 *
 * @param open deck where nothing is hung
 */
record PlanWater(Geometry open, List<Way> ways) {
  /** Radius of the mark of a place, mm. */
  static final double SPOT_MM = 0.6;

  /** Nearer to the place than this on paper, where the rain lands is not told apart from it, mm. */
  private static final double LEAST_WAY_MM = 4;

  private static final double HATCH_MM = 2.4;

  /** Hatching does not come nearer than this, or a drawing looked at closely would be all hatch. */
  private static final double LEAST_HATCH = 0.03;

  /** What lands on less deck than this, m² (a hand), is told by its mark alone. */
  private static final double LEAST_LANDED = 0.01;

  /** Regions nearer to each other than this are one, metres. */
  private static final double JOINED = 0.002;

  /** Places that are tried for the words in a region. */
  private static final int TRIES = 24;

  static final String OPEN_WORDS = "not drained";

  private static final GeometryFactory JTS = new GeometryFactory();

  /**
   * Of water that gets through.
   *
   * @param from the middle of the furthest region that it lands on; the place itself where that is
   *     little
   * @param at where it gets through
   */
  record Way(Vec2 from, Vec2 at) {}

  static PlanWater of(PlanRain rain, PlanPlaces places) {
    List<Geometry> open = new ArrayList<>();
    rain.open().forEach(r -> open.add(region(r, places).buffer(JOINED)));
    Geometry all = open.isEmpty() ? JTS.createPolygon() : UnaryUnionOp.union(open).buffer(-JOINED);
    List<Way> ways =
        rain.through().stream()
            .map(
                t ->
                    way(
                        places.ofWorld(t.at()),
                        t.landed().stream().map(r -> region(r, places)).toList()))
            .toList();
    return new PlanWater(all, ways);
  }

  private static Polygon region(List<Vec3> world, PlanPlaces places) {
    Coordinate[] ring = new Coordinate[world.size() + 1];
    for (int i = 0; i < ring.length; i++) {
      Vec2 p = places.ofWorld(world.get(i % world.size()));
      ring[i] = new Coordinate(p.x(), p.y());
    }
    return JTS.createPolygon(ring);
  }

  private static Way way(Vec2 at, List<Polygon> regions) {
    boolean isLittle = regions.stream().mapToDouble(Polygon::getArea).sum() < LEAST_LANDED;
    Vec2 from =
        (isLittle ? Stream.<Polygon>of() : regions.stream())
            .map(r -> point(r.getCentroid().getCoordinate()))
            .max(Comparator.comparingDouble(c -> c.minus(at).length()))
            .orElse(at);
    return new Way(from, at);
  }

  private static Vec2 point(Coordinate c) {
    return new Vec2(c.x, c.y);
  }

  boolean hasOpen() {
    return !open.isEmpty();
  }

  /** Lines across what is not drained, below all texts. */
  void hatch(PlanBuilder to, double mm) {
    hatch(open, to, mm);
  }

  static void hatch(Geometry area, PlanBuilder to, double mm) {
    if (area.isEmpty()) {
      return;
    }
    Envelope box = area.getEnvelopeInternal();
    double step = Math.max(HATCH_MM * mm, LEAST_HATCH) * Math.sqrt(2);
    List<LineString> lines = new ArrayList<>();
    double first = Math.floor((box.getMinX() + box.getMinY()) / step) * step;
    for (double sum = first; sum < box.getMaxX() + box.getMaxY(); sum += step) {
      lines.add(
          JTS.createLineString(
              new Coordinate[] {
                new Coordinate(sum - box.getMinY(), box.getMinY()),
                new Coordinate(sum - box.getMaxY(), box.getMaxY())
              }));
    }
    Geometry within =
        JTS.createMultiLineString(lines.toArray(new LineString[0])).intersection(area);
    for (int i = 0; i < within.getNumGeometries(); i++) {
      Coordinate[] ends = within.getGeometryN(i).getCoordinates();
      if (ends.length == 2) {
        to.line(List.of(point(ends[0]), point(ends[1])), PlanStyle.OPEN);
      }
    }
  }

  void write(PlanBuilder to, PlanRoom room, double mm) {
    for (int i = 0; hasOpen() && i < open.getNumGeometries(); i++) {
      room.placeIfFree(openTexts(open.getGeometryN(i))).ifPresent(to::add);
    }
    for (Way way : ways) {
      if (way.at().minus(way.from()).length() > LEAST_WAY_MM * mm) {
        to.arrow(way.from(), way.at(), PlanStyle.LEAK);
      }
    }
    ways.forEach(w -> to.circle(w.at(), SPOT_MM * mm, PlanStyle.ALERT));
  }

  /** Along the middle of a region, from its middle outwards. */
  private static List<PlanItem.Label> openTexts(Geometry region) {
    Envelope box = region.getEnvelopeInternal();
    Vec2 middle = point(box.centre());
    boolean wide = box.getWidth() > box.getHeight();
    Vec2 half = wide ? new Vec2(box.getWidth() / 2, 0) : new Vec2(0, box.getHeight() / 2);
    return IntStream.range(0, TRIES)
        .mapToObj(i -> middle.plus(half.times((i % 2 == 0 ? 1.0 : -1.0) * i / TRIES)))
        .map(at -> PlanTexts.text(at, OPEN_WORDS, 0, PlanStyle.TAG))
        .toList();
  }
}
