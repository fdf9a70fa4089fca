package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/**
 * The decks in plan: joists, bays with their names and falls, blocking, crossings, gutter and
 * outlets. The plan is turned so that the first field falls down the sheet, house at the top.
 */
public final class DeckPlan {
  private static final double FALL_ARROW_MM = 1.8;

  private final PlanBuilder plan = new PlanBuilder();
  private final Transform sheet;
  private final UnitSystem units;

  private DeckPlan(Field first, UnitSystem units) {
    Transform f = first.frame();
    this.sheet = new Transform(f.origin(), f.x().negated(), f.y().negated(), f.z());
    this.units = units;
  }

  /**
   * The drawing, in metres.
   *
   * @param layout the assembly, where there is one
   * @return empty when the model has no field to draw
   */
  public static Optional<PlanDrawing> of(
      List<FieldBays> fields, Optional<Layout> layout, UnitSystem units, String title) {
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    DeckPlan plan = new DeckPlan(fields.get(0).field(), units);
    fields.forEach(f -> plan.framing(f.field()));
    for (FieldBays field : fields) {
      Optional<FieldLayout> own =
          layout.flatMap(
              l ->
                  l.fields().stream()
                      .filter(x -> x.field().equals(field.field().id()))
                      .findFirst());
      own.ifPresent(plan::parts);
      field.bays().forEach(b -> plan.bay(field.field(), b, own));
    }
    plan.scaleBar(fields.get(0));
    return Optional.of(plan.plan.build(title));
  }

  /** A sheet that says that there is nothing to draw. */
  public static PlanDrawing empty(String title) {
    return new PlanBuilder()
        .label(
            new Vec2(0, 0),
            "No joists found in " + title,
            PlanBuilder.TEXT_MM,
            PlanItem.Anchor.MIDDLE,
            0,
            PlanStyle.NOTE)
        .build(title);
  }

  private void framing(Field field) {
    for (Support beam : field.dropBeams()) {
      member(beam.member(), PlanStyle.BEAM);
    }
    field.posts().forEach(p -> member(p, PlanStyle.POST));
    for (JoistLine line : field.lines()) {
      line.plies().forEach(p -> member(p, PlanStyle.JOIST));
    }
    field.high().forEach(s -> member(s.member(), PlanStyle.LEDGER));
    field.low().forEach(s -> member(s.member(), PlanStyle.LEDGER));
    field.blocking().forEach(b -> member(b, PlanStyle.BLOCKING));
  }

  private void member(Member member, PlanStyle style) {
    outline(member.element().shape(), style);
  }

  private void outline(Mesh mesh, PlanStyle style) {
    Coordinate[] flat = new Coordinate[mesh.vertexCount()];
    for (int i = 0; i < flat.length; i++) {
      Vec3 p = sheet.toLocal(mesh.vertex(i));
      flat[i] = new Coordinate(p.x(), p.y());
    }
    Geometry hull = new ConvexHull(flat, new GeometryFactory()).getConvexHull();
    List<Vec2> ring = new ArrayList<>();
    for (int i = 0; i + 1 < hull.getNumPoints(); i++) {
      ring.add(new Vec2(hull.getCoordinates()[i].x, hull.getCoordinates()[i].y));
    }
    if (ring.size() > 2) {
      plan.area(ring, style);
    }
  }

  private void parts(FieldLayout layout) {
    for (Part part : layout.parts()) {
      style(part).ifPresent(s -> outline(part.mesh(), s));
    }
  }

  private static Optional<PlanStyle> style(Part part) {
    return switch (part.kind()) {
      case PAN, COLLAR_PIECE, PLY_STRIP -> Optional.of(PlanStyle.PAN);
      case GUTTER -> Optional.of(PlanStyle.GUTTER);
      case OUTLET -> Optional.of(PlanStyle.DOWNSPOUT);
      case SIDE_RAIL -> Optional.of(PlanStyle.RAIL);
      default -> Optional.empty();
    };
  }

  private void bay(Field field, Bay bay, Optional<FieldLayout> layout) {
    for (Crossing crossing : bay.crossings()) {
      crossing(field, bay, crossing);
    }
    double length = bay.length();
    plan.label(
        at(field, bay, length * 0.12),
        bay.id(),
        PlanBuilder.TEXT_MM,
        PlanItem.Anchor.MIDDLE,
        0,
        PlanStyle.TAG);
    plan.label(
        at(field, bay, length * 0.22),
        Lengths.format(bay.clearWidthHigh(), units),
        PlanBuilder.SMALL_TEXT_MM,
        PlanItem.Anchor.MIDDLE,
        90,
        PlanStyle.NOTE);
    boolean served =
        layout.isPresent()
            && layout.get().parts().stream()
                .anyMatch(p -> p.bay().filter(bay.id()::equals).isPresent());
    if (served) {
      plan.arrow(at(field, bay, length * 0.4), at(field, bay, length * 0.62), PlanStyle.FALL);
      plan.label(
          at(field, bay, length * 0.68),
          "1:" + Math.round(1 / layout.get().fall()),
          FALL_ARROW_MM,
          PlanItem.Anchor.MIDDLE,
          0,
          PlanStyle.FALL);
    }
  }

  private void crossing(Field field, Bay bay, Crossing crossing) {
    double v = crossing.stretch().middle();
    double u = bay.leftFace().at(v) + crossing.across();
    if (crossing.way() == Way.THROUGH) {
      plan.circle(on(field, u, v), crossing.size() / 2, PlanStyle.CROSSING);
    } else {
      plan.area(
          List.of(
              on(field, crossing.acrossStretch().from(), crossing.stretch().from()),
              on(field, crossing.acrossStretch().to(), crossing.stretch().from()),
              on(field, crossing.acrossStretch().to(), crossing.stretch().to()),
              on(field, crossing.acrossStretch().from(), crossing.stretch().to())),
          PlanStyle.CROSSING);
    }
  }

  private Vec2 at(Field field, Bay bay, double station) {
    double v = bay.stretch().from() + station;
    return on(field, (bay.leftFace().at(v) + bay.rightFace().at(v)) / 2, v);
  }

  private Vec2 on(Field field, double u, double v) {
    Vec3 p = sheet.toLocal(field.frame().apply(new Vec3(u, v, 0)));
    return new Vec2(p.x(), p.y());
  }

  private void scaleBar(FieldBays first) {
    double low = first.bays().stream().mapToDouble(b -> b.stretch().to()).max().orElse(1);
    double right = first.field().lines().get(first.field().lines().size() - 1).right().at(low);
    Vec2 at = on(first.field(), right, low + 0.8);
    boolean metric = units == UnitSystem.METRIC;
    plan.scaleBar(at, metric ? 1 : Lengths.FOOT, metric ? 2 : 6, metric ? "m" : "ft");
  }
}
