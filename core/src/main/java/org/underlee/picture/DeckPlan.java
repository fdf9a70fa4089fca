package org.underlee.picture;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
  /** From the lowest thing drawn down to the scale bar, metres. */
  private static final double BELOW = 0.4;

  /** From the scale bar's left end to the legend, metres. */
  private static final double LEGEND_RIGHT = 2.6;

  /** Half the width of a mark, metres. */
  private static final double SPOT = 0.025;

  /** Shares of a bay's length at which its width may stand, the usual one first. */
  private static final List<Double> WIDTH_AT = List.of(0.26, 0.34, 0.8, 0.18);

  /** Half of what the width takes of the length. */
  private static final double WIDTH_ROOM = 0.055;

  private final PlanBuilder plan = new PlanBuilder();
  private final Transform sheet;
  private final UnitSystem units;
  private Vec2 lowLeft = new Vec2(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

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
    return of(fields, layout, units, title, List.of(), List.of());
  }

  /** A bay by its field's id and its own. */
  public record BayAt(String field, String bay) {}

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
      List<BayAt> chosen,
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
          .filter(b -> chosen.contains(new BayAt(field.field().id(), b.id())))
          .forEach(b -> plan.plan.area(plan.corners(field.field(), b), PlanStyle.CHOSEN));
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

  /** The bay at a place of the drawing. */
  public static Optional<BayAt> bayAt(List<FieldBays> fields, Vec2 place) {
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    DeckPlan plan = new DeckPlan(fields.get(0).field(), UnitSystem.METRIC);
    Vec3 world = plan.sheet.apply(new Vec3(place.x(), place.y(), 0));
    for (FieldBays field : fields) {
      Vec3 p = field.field().frame().toLocal(world);
      for (Bay bay : field.bays()) {
        if (bay.stretch().contains(p.y())
            && p.x() > bay.leftFace().at(p.y())
            && p.x() < bay.rightFace().at(p.y())) {
          return Optional.of(new BayAt(field.field().id(), bay.id()));
        }
      }
    }
    return Optional.empty();
  }

  /** From a place of the drawing, at height 0, to the world; empty where there is nothing drawn. */
  public static Optional<Transform> toWorld(List<FieldBays> fields) {
    return fields.stream().findFirst().map(f -> new DeckPlan(f.field(), UnitSystem.METRIC).sheet);
  }

  /** Where each bay lies in the drawing, as its four corners. */
  public static Map<BayAt, List<Vec2>> outlines(List<FieldBays> fields) {
    Map<BayAt, List<Vec2>> outlines = new LinkedHashMap<>();
    for (FieldBays field : fields) {
      DeckPlan plan = new DeckPlan(fields.get(0).field(), UnitSystem.METRIC);
      for (Bay bay : field.bays()) {
        outlines.put(new BayAt(field.field().id(), bay.id()), plan.corners(field.field(), bay));
      }
    }
    return outlines;
  }

  private List<Vec2> corners(Field field, Bay bay) {
    double from = bay.stretch().from();
    double to = bay.stretch().to();
    return List.of(
        on(field, bay.leftFace().at(from), from),
        on(field, bay.rightFace().at(from), from),
        on(field, bay.rightFace().at(to), to),
        on(field, bay.leftFace().at(to), to));
  }

  private void spot(Vec3 spot) {
    Vec3 p = sheet.toLocal(spot);
    plan.circle(new Vec2(p.x(), p.y()), SPOT, PlanStyle.ALERT);
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
    double length = bay.length();
    double turn = turn(at(field, bay, 0), at(field, bay, length));
    text(at(field, bay, length * 0.09), bay.id(), 0, PlanStyle.TAG);
    String width = Lengths.format(bay.clearWidthHigh(), units);
    text(at(field, bay, clearOfPipes(bay)), width, turn, PlanStyle.NOTE);
    boolean served = layout.isPresent() && layout.get().bays().contains(bay.id());
    if (served) {
      plan.arrow(at(field, bay, length * 0.42), at(field, bay, length * 0.6), PlanStyle.FALL);
      String fall = "1:" + Math.round(1 / layout.get().fall());
      text(at(field, bay, length * 0.7), fall, turn, PlanStyle.FALL);
    }
  }

  /** Where along a bay its width stands: not on what crosses it, where there is another place. */
  private static double clearOfPipes(Bay bay) {
    double length = bay.length();
    double room = WIDTH_ROOM * length;
    return WIDTH_AT.stream()
        .map(share -> share * length)
        .filter(at -> bay.crossings().stream().noneMatch(c -> meets(bay, c, at, room)))
        .findFirst()
        .orElse(WIDTH_AT.get(0) * length);
  }

  private static boolean meets(Bay bay, Crossing crossing, double at, double room) {
    double v = bay.stretch().from() + at;
    return crossing.stretch().from() < v + room && crossing.stretch().to() > v - room;
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
