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
  /** From the lowest thing drawn down to the scale bar, metres. */
  private static final double BELOW = 0.4;

  /** From the scale bar's left end to the legend, metres. */
  private static final double LEGEND_RIGHT = 2.6;

  /** Half the width of a mark, metres. */
  private static final double SPOT = 0.025;

  private final PlanBuilder plan = new PlanBuilder();
  private final PlanPlaces places;
  private final UnitSystem units;
  private Vec2 lowLeft = new Vec2(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

  private DeckPlan(Field first, UnitSystem units) {
    this.places = new PlanPlaces(first);
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
    return of(fields, layout, units, title, List.of(), List.of());
  }

  /**
   * As {@link #of(List, Optional, UnitSystem, String)}, with some bays and places marked.
   *
   * @param chosen bays to mark
   * @param spots places to point at, world metres: where water gets through
   */
  public static Optional<PlanDrawing> of(
      List<FieldBays> fields,
      Optional<Layout> layout,
      UnitSystem units,
      String title,
      List<PlanPlaces.BayAt> chosen,
      List<Vec3> spots) {
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
      field.field().posts().forEach(p -> plan.member(p, PlanStyle.POST));
      field.bays().stream()
          .filter(b -> chosen.contains(new PlanPlaces.BayAt(field.field().id(), b.id())))
          .forEach(b -> plan.plan.area(plan.places.corners(field.field(), b), PlanStyle.CHOSEN));
      field.field().blocking().forEach(b -> plan.member(b, PlanStyle.BLOCKING));
      field.bays().forEach(b -> plan.bay(field.field(), b, own));
    }
    spots.forEach(plan::spot);
    if (!spots.isEmpty()) {
      plan.legend();
    }
    plan.scaleBar(fields.stream().anyMatch(f -> f.field().isAssumed()));
    return Optional.of(plan.plan.build(title));
  }

  private void spot(Vec3 spot) {
    plan.circle(places.ofWorld(spot), SPOT, PlanStyle.ALERT);
  }

  /** Beside the scale bar's row: what a spot is. */
  private void legend() {
    Vec2 at = lowLeft.plus(new Vec2(LEGEND_RIGHT, -BELOW));
    plan.circle(at, SPOT, PlanStyle.ALERT);
    plan.label(
        at.plus(new Vec2(3 * SPOT, 0)),
        "rain gets through here",
        PlanBuilder.SMALL_TEXT_MM,
        PlanItem.Anchor.START,
        0,
        PlanStyle.NOTE);
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
    for (JoistLine line : field.lines()) {
      line.plies().forEach(p -> member(p, PlanStyle.JOIST));
    }
    field.high().forEach(s -> member(s.member(), PlanStyle.LEDGER));
    field.low().forEach(s -> member(s.member(), PlanStyle.LEDGER));
  }

  private void member(Member member, PlanStyle style) {
    outline(member.element().shape(), style);
  }

  private void outline(Mesh mesh, PlanStyle style) {
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
      plan.area(ring, style);
      ring.forEach(
          p -> lowLeft = new Vec2(Math.min(lowLeft.x(), p.x()), Math.min(lowLeft.y(), p.y())));
    }
  }

  private void parts(FieldLayout layout) {
    for (Part part : layout.parts()) {
      style(part).ifPresent(s -> outline(part.mesh(), s));
    }
  }

  private static Optional<PlanStyle> style(Part part) {
    return switch (part.kind()) {
      case PLY_STRIP -> Optional.of(PlanStyle.STRIP);
      case PAN, COLLAR_PIECE, MEMBRANE, SHEET -> Optional.of(PlanStyle.PAN);
      case GUTTER -> Optional.of(PlanStyle.GUTTER);
      case OUTLET -> Optional.of(PlanStyle.DOWNSPOUT);
      case SIDE_RAIL, BATTEN -> Optional.of(PlanStyle.RAIL);
      default -> Optional.empty();
    };
  }

  private void bay(Field field, Bay bay, Optional<FieldLayout> layout) {
    for (Crossing crossing : bay.crossings()) {
      crossing(field, bay, crossing);
    }
    String width = Lengths.format(bay.clearWidthHigh(), units);
    boolean served = layout.isPresent() && layout.get().bays().contains(bay.id());
    BayTexts texts = BayTexts.of(bay, width);
    double turn = turn(at(field, bay, 0), at(field, bay, 1));
    text(at(field, bay, texts.tag()), bay.id(), 0, PlanStyle.TAG);
    text(at(field, bay, texts.width()), width, turn, PlanStyle.NOTE);
    if (served) {
      plan.arrow(
          at(field, bay, texts.arrowFrom()), at(field, bay, texts.arrowTo()), PlanStyle.FALL);
      String fall = "1:" + Math.round(1 / layout.get().fall());
      text(at(field, bay, texts.fall(bay, fall)), fall, turn, PlanStyle.FALL);
    }
  }

  /** The middle of a bay at a share of its length. */
  private Vec2 at(Field field, Bay bay, double share) {
    return places.middle(field, bay, share * bay.length());
  }

  private void text(Vec2 at, String text, double turn, PlanStyle style) {
    plan.label(at, text, PlanBuilder.SMALL_TEXT_MM, PlanItem.Anchor.MIDDLE, turn, style);
  }

  /** Degrees of a line's slant, turned so that text along it is read from below or the right. */
  private static double turn(Vec2 from, Vec2 to) {
    double degrees = Math.toDegrees(Math.atan2(to.y() - from.y(), to.x() - from.x()));
    double half = degrees > 90 + 1e-6 ? degrees - 180 : degrees;
    return half <= -90 + 1e-6 ? half + 180 : half;
  }

  private void crossing(Field field, Bay bay, Crossing crossing) {
    double v = crossing.stretch().middle();
    double u = bay.left().rightAt(v) + crossing.across();
    if (crossing.way() == Way.THROUGH) {
      plan.circle(places.on(field, u, v), crossing.size() / 2, PlanStyle.CROSSING);
    } else {
      plan.area(
          List.of(
              places.on(field, crossing.acrossStretch().from(), crossing.stretch().from()),
              places.on(field, crossing.acrossStretch().to(), crossing.stretch().from()),
              places.on(field, crossing.acrossStretch().to(), crossing.stretch().to()),
              places.on(field, crossing.acrossStretch().from(), crossing.stretch().to())),
          PlanStyle.CROSSING);
    }
  }

  private void scaleBar(boolean assumed) {
    boolean metric = units == UnitSystem.METRIC;
    Vec2 at = lowLeft.minus(new Vec2(0, BELOW));
    if (assumed) {
      plan.label(
          at.minus(new Vec2(0, BELOW)),
          "The framing is assumed: it is not in the model.",
          PlanBuilder.TEXT_MM,
          PlanItem.Anchor.START,
          0,
          PlanStyle.NOTE);
    }
    plan.scaleBar(at, metric ? 1 : Lengths.FOOT, metric ? 2 : 6, metric ? "m" : "ft");
  }
}
