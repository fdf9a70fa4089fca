package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.underlee.framing.Field;
import org.underlee.framing.Member;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.picture.PlanBuilder;
import org.underlee.picture.PlanStyle;

/**
 * All that stands or hangs in one field, cut by an upright plane.
 *
 * @param bodies framing first, what is hung last, so that it is drawn over
 */
record SectionCut(List<Body> bodies) {
  private static final PlanStyle SHEET = PlanStyle.lined("sheet", 0x1d4f66, 0.3).filled(0x1d4f66);

  private static final GeometryFactory SHAPES = new GeometryFactory();

  record Body(Mesh mesh, PlanStyle style) {}

  static SectionCut of(Job.Place place) {
    List<Body> bodies = framing(place.field());
    place.bays().bays().stream()
        .flatMap(b -> b.crossings().stream())
        .forEach(c -> bodies.add(new Body(c.element().shape(), PlanStyle.CROSSING)));
    for (Part part : place.layout().parts()) {
      part.bodies().forEach(b -> bodies.add(new Body(b.mesh(), style(part.kind()))));
    }
    return new SectionCut(bodies);
  }

  private static List<Body> framing(Field field) {
    List<Body> bodies = new ArrayList<>();
    Stream.of(field.carriers(), field.dropBeams(), field.high(), field.low())
        .flatMap(List::stream)
        .forEach(s -> bodies.add(body(s.member(), PlanStyle.LEDGER)));
    field.posts().forEach(p -> bodies.add(body(p, PlanStyle.POST)));
    field.lines().forEach(l -> l.plies().forEach(p -> bodies.add(body(p, PlanStyle.JOIST))));
    field.blocking().forEach(b -> bodies.add(body(b, PlanStyle.BLOCKING)));
    return bodies;
  }

  private static Body body(Member member, PlanStyle style) {
    return new Body(member.element().shape(), style);
  }

  private static PlanStyle style(PartKind kind) {
    return kind == PartKind.DOWNSPOUT || kind == PartKind.OUTLET ? PlanStyle.DOWNSPOUT : SHEET;
  }

  /**
   * Draws what a plane cuts within a window of it.
   *
   * @param plane x to the right, y up; the cut is at z = 0
   */
  void draw(PlanBuilder plan, Transform plane, Envelope shown) {
    for (Body body : bodies) {
      for (Outline ring : Slice.of(body.mesh(), plane)) {
        clipped(ring, shown).forEach(r -> plan.area(r, body.style()));
      }
    }
  }

  /** What of a ring lies in a window. */
  private static List<Outline> clipped(Outline ring, Envelope shown) {
    Polygon polygon =
        SHAPES.createPolygon(
            ring(ring.outer()),
            ring.holes().stream().map(SectionCut::ring).toArray(LinearRing[]::new));
    Geometry window = SHAPES.toGeometry(shown);
    if (window.covers(polygon)) {
      return List.of(ring);
    }
    List<Outline> left = new ArrayList<>();
    Geometry met = polygon.intersection(window);
    for (int i = 0; i < met.getNumGeometries(); i++) {
      if (met.getGeometryN(i) instanceof Polygon p && p.getArea() > 0) {
        left.add(Outline.of(points(p)));
      }
    }
    return left;
  }

  private static LinearRing ring(List<Vec2> ring) {
    return SHAPES.createLinearRing(
        Stream.concat(ring.stream(), ring.stream().limit(1))
            .map(p -> new Coordinate(p.x(), p.y()))
            .toArray(Coordinate[]::new));
  }

  private static List<Vec2> points(Polygon polygon) {
    Coordinate[] all = polygon.getExteriorRing().getCoordinates();
    return Stream.of(all).limit(all.length - 1L).map(c -> new Vec2(c.x, c.y)).toList();
  }
}
