package org.underlee.writeback;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.underlee.framing.Storey;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.Family;
import org.underlee.kit.Kit;
import org.underlee.kit.Material;
import org.underlee.kit.Shop;
import org.underlee.kit.StockItem;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Link;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Why;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * A small laid-out field with one of each kind of part, in a field turned by 30° on a fall of 1:96:
 * bent, tapered and holed sheet, oblique, downward and mirrored sweeps.
 */
final class SampleField {
  private static final Shop SHOP = Shop.oneByOne("piece", "a kit");
  static final String FIELD = "deck-1/field-1";
  static final double FALL = 1.0 / 96;
  private static final double SHEET = 0.001;

  private final List<Part> parts = new ArrayList<>();

  /** u along the ledger, v down the fall, w up. */
  private final Transform field;

  private SampleField() {
    double c = Math.sqrt(0.75);
    Transform level =
        new Transform(new Vec3(12, 7, 2.8), new Vec3(c, 0.5, 0), new Vec3(-0.5, c, 0), Vec3.Z);
    Vec3 flow = level.direction(new Vec3(0, 1, -FALL)).unit();
    field = new Transform(level.origin(), level.x(), flow, level.x().cross(flow));
  }

  static FieldLayout layout() {
    return new SampleField().build();
  }

  /** The same under another field's name. */
  static FieldLayout layout(String field) {
    FieldLayout s = layout();
    UnaryOperator<String> renamed = id -> id.replace(FIELD, field);
    List<Part> parts = s.parts().stream().map(p -> renamed(p, renamed)).toList();
    List<Link> links =
        s.links().stream()
            .map(l -> new Link(renamed.apply(l.from()), renamed.apply(l.to()), l.at()))
            .toList();
    return new FieldLayout(
        s.deck(),
        field,
        s.storey(),
        s.seatHigh(),
        s.fall(),
        s.run(),
        s.lowEnd(),
        s.binding(),
        parts,
        links);
  }

  private static Part renamed(Part p, UnaryOperator<String> renamed) {
    return new Part(
        renamed.apply(p.id()),
        p.label(),
        p.kind(),
        renamed.apply(p.field()),
        p.bay(),
        p.item(),
        p.length(),
        p.width(),
        p.sheetWidth(),
        p.sheetLength(),
        p.fall(),
        p.bodies(),
        p.section(),
        p.count(),
        p.cuts(),
        p.why());
  }

  static Layout of(List<FieldLayout> fields) {
    return new Layout(kit(), fields, List.of());
  }

  static Kit kit() {
    Material steel = new Material("steel", "Coated steel sheet", 7850, 120, 130, 140, "a table");
    Material tape = new Material("butyl", "Butyl \"tape\" für ½″ Fugen", 1300, 30, 30, 30, "");
    List<StockItem> items = new ArrayList<>();
    for (String id : List.of("pan", "rail", "head", "strip", "gutter", "pipe", "fitting", "hook")) {
      items.add(
          new StockItem(
              id,
              "Bent " + id,
              Optional.empty(),
              "piece",
              List.of(3.0),
              0,
              "steel",
              SHEET,
              SHOP,
              "a kit"));
    }
    items.add(
        new StockItem(
            "tape",
            "Seam tape",
            Optional.empty(),
            "roll",
            List.of(),
            0,
            "butyl",
            0.002,
            SHOP,
            "a kit"));
    items.add(
        new StockItem(
            "screw", "Screw", Optional.empty(), "piece", List.of(), 0, "steel", 0, SHOP, "a kit"));
    return new Kit(
        "sheet-pans", "1", "Sheet pans", Family.PANS, Map.of(), List.of(steel, tape), items);
  }

  static List<BillLine> bill() {
    return List.of(
        new BillLine(
            "pan", "Bent pan", "sheet", 2, BillLine.QuantityKind.COUNT, List.of(id("pan-1"))),
        new BillLine(
            "rail",
            "Bent rail",
            "m",
            6.25,
            BillLine.QuantityKind.LENGTH,
            List.of(id("side-rail-1"))),
        new BillLine("tape", "Seam tape", "m²", 0.15, BillLine.QuantityKind.AREA, List.of()));
  }

  static Provenance provenance() {
    return new Provenance("0.1.0", "ab12", java.util.Optional.empty());
  }

  static String id(String part) {
    return FIELD + "/" + part;
  }

  private FieldLayout build() {
    sheets();
    lengths();
    drain();
    add(PartKind.HANGER, "hanger-1", "hook", 0.1, 0.03, bar(0.5, 3.05, -0.02, 0.03, 0.1, 0.003));
    add(PartKind.FASTENER, "fastener-1", "screw", 0, 0);
    return new FieldLayout(
        "deck-1",
        FIELD,
        Optional.of(new Storey(TinyModel.STOREY, "Upper", 3)),
        0.02,
        FALL,
        3.0,
        "the house side of beam B1",
        Words.of("full-depth blocking at %s", Quantity.length(1.829)),
        parts,
        List.of(
            link("gutter-1", "outlet-1", 1.0),
            link("outlet-1", "downspout-1", 0.9),
            link("downspout-1", "elbow-1", 0.5)));
  }

  private void sheets() {
    add(PartKind.PAN, "pan-1", "pan", 3, 0.34, swept(trough(0.34, 0.02), 0.03, 0, 0, 3));
    Outline taper =
        Outline.of(
            List.of(new Vec2(0.4, 0), new Vec2(0.74, 0), new Vec2(0.70, 3), new Vec2(0.44, 3)));
    add(PartKind.PAN, "pan-2", "pan", 3, 0.34, flat(taper));
    Outline holed =
        new Outline(
            Outline.rectangle(0.8, 1, 1.14, 1.3).outer(),
            List.of(Outline.circle(0.97, 1.15, 0.06, 32)));
    add(
        PartKind.COLLAR_PIECE,
        "collar-piece-1",
        "pan",
        0.3,
        0.34,
        flat(holed),
        bar(0.8, 1, SHEET, SHEET, 0.3, 0.02));
    add(PartKind.TAPE, "tape-1", "tape", 3, 0.05, flat(Outline.rectangle(0.36, 0, 0.41, 3)));
  }

  private void lengths() {
    Outline angle =
        Outline.of(
            List.of(
                new Vec2(0, 0),
                new Vec2(0.025, 0),
                new Vec2(0.025, SHEET),
                new Vec2(SHEET, SHEET),
                new Vec2(SHEET, 0.1),
                new Vec2(0, 0.1)));
    formed(PartKind.SIDE_RAIL, "side-rail-1", "rail", 3, angle, swept(angle, 0, 0, 0, 3));
    Extrusion left = swept(angle, 0.4, 0, 0, 3);
    Transform f = left.frame();
    Transform mirror = new Transform(f.origin(), f.x().negated(), f.y(), f.z());
    Extrusion other = new Extrusion(mirror, angle, left.sweep());
    formed(PartKind.SIDE_RAIL, "side-rail-2", "rail", 3, angle, other);
    formed(PartKind.HEAD_RAIL, "head-rail-1", "head", 1, angle, along(angle, 0));
    formed(PartKind.PLY_STRIP, "ply-strip-1", "strip", 3, trough(0.08, 0.01), strip());
  }

  private Extrusion strip() {
    return swept(trough(0.08, 0.01), 0.9, 0, 0.05, 3);
  }

  private void drain() {
    Outline bowl = trough(0.12, 0.09);
    formed(PartKind.GUTTER, "gutter-1", "gutter", 1.2, bowl, along(bowl, 3));
    add(PartKind.END_CAP, "end-cap-1", "fitting", 0.1, 0.12, bar(0, 3, -0.2, 0.002, 0.12, 0.09));
    Outline pipe = tube(0.04);
    formed(
        PartKind.OUTLET, "outlet-1", "fitting", 0.1, pipe, down(pipe, 2.6, new Vec3(0, 0, -0.1)));
    formed(PartKind.DOWNSPOUT, "downspout-1", "pipe", 2, pipe, down(pipe, 2.5, new Vec3(0, 0, -2)));
    Vec3 bend = new Vec3(0.05, 0, -0.1);
    formed(PartKind.ELBOW, "elbow-1", "fitting", 0.15, pipe, down(pipe, 0.5, bend));
  }

  private Link link(String from, String to, double w) {
    return new Link(id(from), id(to), field.apply(new Vec3(1, 3.05, w)));
  }

  private static Outline tube(double radius) {
    return new Outline(
        Outline.circle(0, 0, radius, 24), List.of(Outline.circle(0, 0, radius - 0.002, 24)));
  }

  /** A U of bent sheet, open at the top. */
  private static Outline trough(double width, double height) {
    return Outline.of(
        List.of(
            new Vec2(0, 0),
            new Vec2(width, 0),
            new Vec2(width, height),
            new Vec2(width - SHEET, height),
            new Vec2(width - SHEET, SHEET),
            new Vec2(SHEET, SHEET),
            new Vec2(SHEET, height),
            new Vec2(0, height)));
  }

  /** Section upright across the flow, swept against its frame's z so that it runs downhill. */
  private Extrusion swept(Outline section, double u, double v, double w, double length) {
    Vec3 back = field.y().negated();
    Transform frame = new Transform(field.apply(new Vec3(u, v, w)), field.x(), field.z(), back);
    return new Extrusion(frame, section, new Vec3(0, 0, -length));
  }

  /** Swept along the ledger. */
  private Extrusion along(Outline section, double v) {
    Transform frame =
        new Transform(field.apply(new Vec3(0, v, -0.2)), field.y(), field.z(), field.x());
    return Extrusion.straight(frame, section, 1.2);
  }

  private Extrusion flat(Outline plan) {
    return Extrusion.straight(field, plan, SHEET);
  }

  private Extrusion bar(double u, double v, double w, double du, double dv, double dw) {
    Transform frame =
        new Transform(field.apply(new Vec3(u, v, w)), field.x(), field.y(), field.z());
    return Extrusion.straight(frame, Outline.rectangle(0, 0, du, dv), dw);
  }

  private static Extrusion down(Outline section, double height, Vec3 sweep) {
    return new Extrusion(Transform.translation(new Vec3(11.3, 10, height)), section, sweep);
  }

  private void formed(
      PartKind kind, String name, String item, double length, Outline section, Extrusion body) {
    add(kind, name, item, length, 0.1, Optional.of(section), body);
  }

  private void add(
      PartKind kind, String name, String item, double length, double width, Extrusion... bodies) {
    add(kind, name, item, length, width, Optional.empty(), bodies);
  }

  private void add(
      PartKind kind,
      String name,
      String item,
      double length,
      double width,
      Optional<Outline> section,
      Extrusion... bodies) {
    boolean flows = kind != PartKind.FASTENER && kind != PartKind.HANGER;
    parts.add(
        new Part(
            id(name),
            name.toUpperCase(java.util.Locale.ROOT),
            kind,
            FIELD,
            kind == PartKind.PAN ? Optional.of("B1") : Optional.empty(),
            item,
            length,
            width,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            flows ? OptionalDouble.of(FALL) : OptionalDouble.empty(),
            List.of(bodies),
            section,
            kind == PartKind.FASTENER ? 48 : 1,
            List.of(),
            Why.because("clear width less 2 × 12 mm; it's the kit's side gap")));
  }
}
