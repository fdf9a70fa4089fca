package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.bay.FieldBays;
import org.underlee.bay.Way;
import org.underlee.framing.Field;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.framing.Support;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;

/**
 * What a plan of decks shows without a word: framing, parts, blocking and crossings. Turned so that
 * the first field falls down the sheet. Not for several threads at once.
 */
final class PlanFraming {
  private final PlanBuilder plan;
  private final PlanPlaces places;
  private final List<FieldBays> fields;
  private final Catchments catchments;

  PlanFraming(PlanBuilder plan, PlanPlaces places, List<FieldBays> fields, Catchments catchments) {
    this.catchments = catchments;
    this.plan = plan;
    this.places = places;
    this.fields = List.copyOf(fields);
  }

  /** A field's own part of a layout. */
  static Optional<FieldLayout> of(Optional<Layout> layout, FieldBays field) {
    return layout.flatMap(
        l -> l.fields().stream().filter(x -> x.field().equals(field.field().id())).findFirst());
  }

  /**
   * Draws the fields.
   *
   * @param chosen bays to mark
   * @param things parts and elements to mark, by id and GlobalId
   */
  void draw(Optional<Layout> layout, List<PlanPlaces.BayAt> chosen, Set<String> things) {
    fields.forEach(f -> framing(f.field()));
    for (FieldBays field : fields) {
      of(layout, field).ifPresent(l -> parts(l, things));
      field.field().posts().forEach(p -> member(p, PlanStyle.POST));
      field.bays().stream()
          .filter(b -> chosen.contains(new PlanPlaces.BayAt(field.field().id(), b.id())))
          .forEach(b -> plan.area(places.corners(field.field(), b), PlanStyle.CHOSEN));
      field.field().blocking().forEach(b -> member(b, PlanStyle.BLOCKING));
      field.bays().forEach(b -> b.crossings().forEach(c -> crossing(field.field(), b, c)));
    }
    plan.mark(things);
  }

  private void framing(Field field) {
    for (Support beam : field.dropBeams()) {
      member(beam.member(), PlanStyle.BEAM);
    }
    for (JoistLine line : field.lines()) {
      line.plies().forEach(p -> member(p, PlanStyle.JOIST));
    }
    field.high().forEach(s -> member(s.member(), PlanStyle.LEDGER));
    field.low().forEach(s -> member(s.member(), PlanStyle.LEDGER));
  }

  private void member(Member member, PlanStyle style) {
    outline(member.id(), member.element().shape(), style);
  }

  private void outline(String id, Mesh mesh, PlanStyle style) {
    Coordinate[] flat = new Coordinate[mesh.vertexCount()];
    for (int i = 0; i < flat.length; i++) {
      Vec2 p = places.ofWorld(mesh.vertex(i));
      flat[i] = new Coordinate(p.x(), p.y());
    }
    Geometry hull = new ConvexHull(flat, new GeometryFactory()).getConvexHull();
    List<Vec2> ring = new ArrayList<>();
    for (int i = 0; i + 1 < hull.getNumPoints(); i++) {
      ring.add(new Vec2(hull.getCoordinates()[i].x, hull.getCoordinates()[i].y));
    }
    if (ring.size() > 2) {
      plan.thing(id, Outline.of(ring), style);
    }
  }

  /** A part that a plan leaves out is drawn when it is the one that is looked for. */
  private void parts(FieldLayout layout, Set<String> wanted) {
    for (Part part : layout.parts()) {
      Optional<PlanStyle> usual = style(part);
      Optional<PlanStyle> some =
          wanted.contains(part.id()) ? usual.or(() -> Optional.of(PlanStyle.CHOSEN_LINE)) : usual;
      some.ifPresent(s -> outline(part.id(), part.mesh(), s));
    }
  }

  private Optional<PlanStyle> style(Part part) {
    return switch (part.kind()) {
      case PLY_STRIP -> Optional.of(PlanStyle.STRIP);
      case PAN, COLLAR_PIECE, MEMBRANE, SHEET -> Optional.of(catchments.tint(part));
      case GUTTER -> Optional.of(PlanStyle.GUTTER);
      case OUTLET -> Optional.of(PlanStyle.DOWNSPOUT);
      case SIDE_RAIL, BATTEN -> Optional.of(PlanStyle.RAIL);
      default -> Optional.empty();
    };
  }

  private void crossing(Field field, Bay bay, Crossing crossing) {
    String id = crossing.element().globalId();
    double v = crossing.stretch().middle();
    double u = bay.left().rightAt(v) + crossing.across();
    if (crossing.way() == Way.THROUGH) {
      plan.round(id, places.on(field, u, v), crossing.size() / 2, PlanStyle.CROSSING);
    } else {
      plan.thing(
          id,
          Outline.of(
              List.of(
                  places.on(field, crossing.acrossStretch().from(), crossing.stretch().from()),
                  places.on(field, crossing.acrossStretch().to(), crossing.stretch().from()),
                  places.on(field, crossing.acrossStretch().to(), crossing.stretch().to()),
                  places.on(field, crossing.acrossStretch().from(), crossing.stretch().to()))),
          PlanStyle.CROSSING);
    }
  }
}
