package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/**
 * The long section through one bay, high end to the left: the joist behind, what is cut of the
 * framing and of the assembly, seats, fall and headroom. Heights are drawn twice as large as
 * lengths, so that a fall can be seen; the drawing says so.
 */
public final class BaySection {
  /** How much larger heights are drawn than lengths. */
  private static final double TALL = 2;

  /** From the outermost thing drawn to the first row of dimensions, metres. */
  private static final double ROW = 0.16;

  private final Field field;
  private final Bay bay;
  private final Optional<FieldLayout> layout;
  private final UnitSystem units;
  private final PlanBuilder to = new PlanBuilder();
  private final Transform frame;
  private final double u;
  private double top = Double.NEGATIVE_INFINITY;
  private double low = Double.POSITIVE_INFINITY;

  private BaySection(FieldBays bays, Bay bay, Optional<FieldLayout> layout, UnitSystem units) {
    this.field = bays.field();
    this.bay = bay;
    this.layout = layout;
    this.units = units;
    this.frame = field.frame();
    double v = bay.stretch().middle();
    this.u = (bay.leftFace().at(v) + bay.rightFace().at(v)) / 2;
  }

  /**
   * The drawing, in metres.
   *
   * @param bay {@code B3}
   * @param layout the assembly of the field, where there is one
   * @throws java.util.NoSuchElementException when the field has no such bay
   */
  public static PlanDrawing of(
      FieldBays bays, String bay, Optional<FieldLayout> layout, UnitSystem units) {
    Bay chosen = bays.bays().stream().filter(b -> b.id().equals(bay)).findFirst().orElseThrow();
    BaySection section = new BaySection(bays, chosen, layout, units);
    section.framing();
    section.assembly();
    section.crossings();
    section.dimensions();
    return section.to.build(bay + " of " + bays.field().id());
  }

  private void framing() {
    List<Mesh> joist = bay.left().plies().stream().map(BaySection::mesh).toList();
    MeshElevation.of(joist, frame).forEach(o -> area(o, PlanStyle.JOIST));
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
      area(face, style);
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
    parts(PartKind.GUTTER, PartKind.HEAD_RAIL, PartKind.RIDGE_CAP)
        .forEach(p -> cut(p, PlanStyle.GUTTER));
    parts(PartKind.PAN, PartKind.COLLAR_PIECE, PartKind.SADDLE).forEach(p -> cut(p, SHEET));
  }

  private static final PlanStyle SHEET = PlanStyle.lined("sheet", 0x1d5f8a, 0.55).filled(0x1d5f8a);

  private Stream<Part> parts(PartKind... kinds) {
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
    double floor = part.kind() == PartKind.SIDE_RAIL ? Double.NEGATIVE_INFINITY : low - ROW;
    MeshElevation.of(bodies, frame).stream()
        .filter(o -> o.outer().stream().anyMatch(p -> p.y() > floor))
        .forEach(o -> area(above(floor, o), style));
  }

  /** A downspout is shown as far as the framing reaches, or the section would be all downspout. */
  private static Outline above(double floor, Outline o) {
    return Outline.of(
        o.outer().stream().map(p -> new Vec2(p.x(), Math.max(p.y(), floor))).toList());
  }

  private void cut(Part part, PlanStyle style) {
    for (Extrusion body : part.bodies()) {
      MeshSlice.of(body.mesh(), frame, u).forEach(o -> area(o, style));
    }
  }

  private void crossings() {
    for (Crossing c : bay.crossings()) {
      Outline box =
          Outline.rectangle(
              c.stretch().from(), c.heights().from(), c.stretch().to(), c.heights().to());
      area(box, PlanStyle.CROSSING);
      String name = c.element().name().isEmpty() ? c.element().ifcClass() : c.element().name();
      Vec2 at = tall(new Vec2(c.stretch().middle(), c.heights().to()));
      to.label(at, name, PlanBuilder.SMALL_TEXT_MM, PlanItem.Anchor.ABOVE, 0, PlanStyle.NOTE);
    }
  }

  private void dimensions() {
    double from = bay.stretch().from();
    double end = bay.stretch().to();
    Vec2 highTop = tall(new Vec2(from, top));
    Vec2 lowTop = tall(new Vec2(end, top));
    double first = TALL * ROW;
    stations(from, first);
    to.dimension(highTop, lowTop, 2 * first, length(bay.length()));
    double bottom = bay.joistBottom(from);
    to.dimension(
        tall(new Vec2(from, bottom)),
        tall(new Vec2(from, bay.joistTop(from))),
        TALL * ROW * 1.4,
        length(bay.joistTop(from) - bottom));
    layout.filter(l -> isServed()).ifPresent(this::fall);
    to.label(
        new Vec2((from + end) / 2, TALL * (low - 4.5 * ROW)),
        "Section through "
            + bay.id()
            + ", high end to the left, places from there; heights drawn double",
        PlanBuilder.SMALL_TEXT_MM,
        PlanItem.Anchor.BELOW,
        0,
        PlanStyle.NOTE);
  }

  /** From the high end to each blocking, in a row of their own. */
  private void stations(double from, double offset) {
    List<Double> at = new ArrayList<>(List.of(0.0));
    bay.blocking().stream().map(Block::at).sorted().forEach(at::add);
    for (int i = 0; i + 1 < at.size(); i++) {
      to.dimension(
          tall(new Vec2(from + at.get(i), top)),
          tall(new Vec2(from + at.get(i + 1), top)),
          offset,
          length(at.get(i + 1) - at.get(i)));
    }
  }

  private boolean isServed() {
    return parts(PartKind.PAN).anyMatch(p -> p.bay().equals(Optional.of(bay.id())));
  }

  private void fall(FieldLayout l) {
    double from = bay.stretch().from();
    double end = from + l.run();
    double below = low - ROW;
    // its text runs to the left of the bay, or the other seat's line would cross it
    seat(from + 0.1 * l.run(), -0.1 * l.run() - 0.02, l, below);
    seat(from + 0.88 * l.run(), -0.03, l, below - 0.6 * ROW);
    double a = from + 0.38 * l.run();
    double b = from + 0.56 * l.run();
    double y = below - 1.5 * ROW;
    to.arrow(tall(new Vec2(a, y)), tall(new Vec2(b, y)), PlanStyle.FALL);
    to.label(
        tall(new Vec2((a + b) / 2, y)),
        Lengths.fall(l.fall()),
        PlanBuilder.TEXT_MM,
        PlanItem.Anchor.BELOW,
        0,
        PlanStyle.FALL);
    to.dimension(
        tall(new Vec2(from, below - 2.9 * ROW)),
        tall(new Vec2(end, below - 2.9 * ROW)),
        0.02,
        length(l.run()));
    headroom(end, below - 0.3 * ROW);
  }

  /**
   * The seat at a station, from the joist bottom there.
   *
   * @param aside from the station to the text, which runs on that way
   */
  private void seat(double v, double aside, FieldLayout l, double textAt) {
    double seat = l.seatHigh() - l.fall() * v;
    double over = seat - bay.joistBottom(v);
    String words =
        "seat "
            + length(Math.abs(over))
            + (over < 0 ? " below" : " above")
            + " joist bottom, at "
            + length(v - bay.stretch().from());
    to.leader(tall(new Vec2(v, seat)), tall(new Vec2(v + aside, textAt)), words);
  }

  private void headroom(double v, double y) {
    field.posts().stream()
        .mapToDouble(p -> frame.toLocal(p.element().shape().bounds().min()).z())
        .min()
        .ifPresent(
            ground -> {
              double lowest = lowestPart();
              Vec2 at = tall(new Vec2(v + 0.16, lowest));
              to.arrow(at, tall(new Vec2(v + 0.16, y - 2 * ROW)), PlanStyle.DIMENSION);
              to.label(
                  tall(new Vec2(v + 0.2, y - ROW)),
                  length(lowest - ground) + " to the ground",
                  PlanBuilder.SMALL_TEXT_MM,
                  PlanItem.Anchor.START,
                  0,
                  PlanStyle.NOTE);
            });
  }

  private double lowestPart() {
    return parts(PartKind.GUTTER, PartKind.PAN)
        .mapToDouble(p -> p.bounds().min().z() - frame.origin().z())
        .min()
        .orElse(low);
  }

  private String length(double metres) {
    return Lengths.format(metres, units);
  }

  private void area(Outline outline, PlanStyle style) {
    for (Vec2 p : outline.outer()) {
      top = Math.max(top, p.y());
      low = Math.min(low, p.y());
    }
    to.area(
        new Outline(
            outline.outer().stream().map(BaySection::tall).toList(),
            outline.holes().stream().map(h -> h.stream().map(BaySection::tall).toList()).toList()),
        style);
  }

  private static Vec2 tall(Vec2 p) {
    return new Vec2(p.x(), TALL * p.y());
  }
}
