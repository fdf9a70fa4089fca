package org.underlee.picture;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Envelope;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.bay.Crossing;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Field;
import org.underlee.framing.Member;
import org.underlee.framing.Support;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths.UnitSystem;

/**
 * The long section through one bay, high end to the left: the joist behind, what is cut of the
 * framing and of the assembly, seats, fall and headroom. Heights are drawn twice as large as
 * lengths, so that a fall can be seen; the drawing says so.
 */
public final class BaySection {
  /** How much larger heights are drawn than lengths. */
  static final double TALL = 2;

  /** How far a downspout is shown below the lowest of the framing, metres. */
  private static final double SPOUT = 0.16;

  private final Field field;
  private final Bay bay;
  private final Optional<FieldLayout> layout;
  private final PlanBuilder to = new PlanBuilder();
  private final Transform frame;
  private final double u;
  private final Envelope drawn = new Envelope();
  private final Envelope gutter = new Envelope();

  private BaySection(FieldBays bays, Bay bay, Optional<FieldLayout> layout) {
    this.field = bays.field();
    this.bay = bay;
    this.layout = layout;
    this.frame = field.frame();
    double v = bay.stretch().middle();
    this.u = (bay.leftFace().at(v) + bay.rightFace().at(v)) / 2;
  }

  /**
   * The drawing, in metres, with every number at every scale.
   *
   * @param bay {@code B3}
   * @param layout the assembly of the field, where there is one
   * @throws java.util.NoSuchElementException when the field has no such bay
   */
  public static ScaledDrawing of(
      FieldBays bays, String bay, Optional<FieldLayout> layout, UnitSystem units) {
    return of(bays, bay, layout, units, Set.of()).drawing();
  }

  /**
   * As {@link #of(FieldBays, String, Optional, UnitSystem)}, with what is where.
   *
   * @param marked parts and elements to mark, by id and GlobalId
   */
  public static PlanThings of(
      FieldBays bays,
      String bay,
      Optional<FieldLayout> layout,
      UnitSystem units,
      Set<String> marked) {
    Bay chosen = bays.bays().stream().filter(b -> b.id().equals(bay)).findFirst().orElseThrow();
    BaySection section = new BaySection(bays, chosen, layout);
    section.framing();
    section.assembly();
    section.notches();
    section.crossings();
    section.to.mark(marked);
    return new PlanThings(
        new Annotated(
            section.to.build(bay + " of " + bays.field().id()),
            new SectionDimensions(
                bays.field(), chosen, layout, units, section.drawn, section.gutter)),
        section.to.things());
  }

  private void framing() {
    List<Mesh> joist = bay.left().plies().stream().map(BaySection::mesh).toList();
    String id = bay.left().plies().get(0).id();
    MeshElevation.of(joist, frame).forEach(o -> area(id, o, PlanStyle.JOIST));
    Stream.of(field.high(), field.low(), field.dropBeams())
        .flatMap(List::stream)
        .map(Support::member)
        .distinct()
        .forEach(m -> cutTimber(m, PlanStyle.LEDGER));
    bay.blocking().stream().map(Block::member).forEach(m -> cutTimber(m, PlanStyle.BLOCKING));
  }

  private static Mesh mesh(Member member) {
    return member.element().shape();
  }

  /** A timber that is cut across shows its diagonals. */
  private void cutTimber(Member member, PlanStyle style) {
    for (Outline face : MeshSlice.of(mesh(member), frame, u)) {
      area(member.id(), face, style);
      if (face.outer().size() == 4) {
        to.line(List.of(tall(face.outer().get(0)), tall(face.outer().get(2))), PlanStyle.CONTEXT);
        to.line(List.of(tall(face.outer().get(1)), tall(face.outer().get(3))), PlanStyle.CONTEXT);
      }
    }
  }

  private void assembly() {
    parts(PartKind.SIDE_RAIL, PartKind.STRAP)
        .filter(p -> p.bay().equals(Optional.of(bay.id())))
        .forEach(p -> elevation(p, PlanStyle.RAIL));
    parts(PartKind.DOWNSPOUT, PartKind.ELBOW, PartKind.OUTLET)
        .filter(this::isInBay)
        .forEach(p -> elevation(p, PlanStyle.DOWNSPOUT));
    parts(PartKind.GUTTER).forEach(p -> gutter.expandToInclude(cut(p, PlanStyle.GUTTER)));
    parts(PartKind.HEAD_RAIL, PartKind.RIDGE_CAP).forEach(p -> cut(p, PlanStyle.GUTTER));
    parts(PartKind.PAN, PartKind.COLLAR_PIECE, PartKind.SADDLE, PartKind.MEMBRANE, PartKind.SHEET)
        .forEach(p -> cut(p, SHEET));
  }

  private static final PlanStyle SHEET = PlanStyle.lined("sheet", 0x1d5f8a, 0.55).filled(0x1d5f8a);

  private Stream<Part> parts(PartKind... kinds) {
    return parts(layout, kinds);
  }

  static Stream<Part> parts(Optional<FieldLayout> layout, PartKind... kinds) {
    List<PartKind> wanted = List.of(kinds);
    return layout.stream()
        .flatMap(l -> l.parts().stream())
        .filter(p -> wanted.contains(p.kind()) && !p.bodies().isEmpty());
  }

  private boolean isInBay(Part part) {
    Vec3 middle = frame.toLocal(part.bounds().centre());
    return middle.x() > bay.leftFace().at(middle.y())
        && middle.x() < bay.rightFace().at(middle.y());
  }

  private void elevation(Part part, PlanStyle style) {
    List<Mesh> bodies = part.bodies().stream().map(Extrusion::mesh).toList();
    double floor =
        part.kind() == PartKind.SIDE_RAIL
            ? Double.NEGATIVE_INFINITY
            : drawn.getMinY() / TALL - SPOUT;
    MeshElevation.of(bodies, frame).stream()
        .filter(o -> o.outer().stream().anyMatch(p -> p.y() > floor))
        .forEach(o -> area(part.id(), above(floor, o), style));
  }

  /** A downspout is shown as far as the framing reaches, or the section would be all downspout. */
  private static Outline above(double floor, Outline o) {
    return Outline.of(
        o.outer().stream().map(p -> new Vec2(p.x(), Math.max(p.y(), floor))).toList());
  }

  /** Draws what is cut of a part, and tells how far it reaches in the drawing. */
  private Envelope cut(Part part, PlanStyle style) {
    Envelope reach = new Envelope();
    for (Extrusion body : part.bodies()) {
      for (Outline face : MeshSlice.of(body.mesh(), frame, u)) {
        area(part.id(), face, style);
        face.outer().stream()
            .map(BaySection::tall)
            .forEach(p -> reach.expandToInclude(p.x(), p.y()));
      }
    }
    return reach;
  }

  /** Over the blocking that they are cut for. */
  private void notches() {
    for (SectionNames.Notch n : SectionNames.notches(bay, field, layout)) {
      to.line(n.edges().stream().map(BaySection::tall).toList(), PlanStyle.NOTCH);
    }
  }

  private void crossings() {
    for (Crossing c : bay.crossings()) {
      Outline box =
          Outline.rectangle(
              c.stretch().from(), c.heights().from(), c.stretch().to(), c.heights().to());
      area(c.element().globalId(), box, PlanStyle.CROSSING);
    }
  }

  private void area(String id, Outline outline, PlanStyle style) {
    Outline drawnTall =
        new Outline(
            outline.outer().stream().map(BaySection::tall).toList(),
            outline.holes().stream().map(h -> h.stream().map(BaySection::tall).toList()).toList());
    drawnTall.outer().forEach(p -> drawn.expandToInclude(p.x(), p.y()));
    to.thing(id, drawnTall, style);
  }

  static Vec2 tall(Vec2 p) {
    return new Vec2(p.x(), TALL * p.y());
  }
}
