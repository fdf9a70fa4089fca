package org.underlee.picture;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Field;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/**
 * The decks in plan: joists, bays with their names and falls, blocking, crossings, gutter and
 * outlets. The plan is turned so that the first field falls down the sheet, house at the top.
 */
public final class DeckPlan {
  /** From the scale bar's left end to the legend, metres. */
  private static final double LEGEND_RIGHT = 2.6;

  /** Half the width of a mark, metres. */
  private static final double SPOT = 0.025;

  private final PlanBuilder plan = new PlanBuilder();
  private final PlanPlaces places;
  private final UnitSystem units;
  private final PlanFraming framing;

  private DeckPlan(List<FieldBays> fields, UnitSystem units) {
    this.places = new PlanPlaces(fields.get(0).field());
    this.framing = new PlanFraming(plan, places, fields);
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
    return of(fields, layout, units, title, Marks.NONE).map(PlanThings::drawing);
  }

  /**
   * What is marked in a plan.
   *
   * @param bays chosen ones
   * @param things chosen parts and elements, by id and GlobalId; elements that the plan does not
   *     draw are not marked
   * @param spots places to point at, world metres: where water gets through
   */
  public record Marks(List<PlanPlaces.BayAt> bays, Set<String> things, List<Vec3> spots) {
    static final Marks NONE = new Marks(List.of(), Set.of(), List.of());

    public Marks {
      bays = List.copyOf(bays);
      things = Set.copyOf(things);
      spots = List.copyOf(spots);
    }
  }

  /** As {@link #of(List, Optional, UnitSystem, String)}, with marks and with what is where. */
  public static Optional<PlanThings> of(
      List<FieldBays> fields,
      Optional<Layout> layout,
      UnitSystem units,
      String title,
      Marks marks) {
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    DeckPlan plan = new DeckPlan(fields, units);
    plan.framing.draw(layout, marks.bays(), marks.things());
    if (fields.size() > 1) {
      plan.framing.names(layout); // first, so that they have room before the names of bays
    }
    for (FieldBays field : fields) {
      Optional<FieldLayout> own = PlanFraming.of(layout, field);
      field.bays().forEach(b -> plan.bay(field.field(), b, own));
    }
    marks.spots().forEach(plan::spot);
    if (!marks.spots().isEmpty()) {
      plan.legend();
    }
    plan.framing.scaleBar(units);
    return Optional.of(plan.plan.buildWithThings(title));
  }

  private void spot(Vec3 spot) {
    plan.circle(places.ofWorld(spot), SPOT, PlanStyle.ALERT);
  }

  /** Beside the scale bar's row: what a spot is. */
  private void legend() {
    Vec2 at = framing.scaleBarAt().plus(new Vec2(LEGEND_RIGHT, 0));
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

  private void bay(Field field, Bay bay, Optional<FieldLayout> layout) {
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
}
