package org.underlee.picture;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.geom.Vec2;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Several fields at a glance: of each its name, which way it falls, and its first and last bay,
 * between which the others are counted. What is in a field is in a {@link DeckPlan} of its own.
 */
public final class DeckOverview {
  /** Shares of a bay's length: where its field's arrow is, and its own name. */
  private static final double ARROW_FROM = 0.45;

  private static final double ARROW_TO = 0.8;
  private static final double BAY_NAME = 0.1;
  private static final double FIELD_NAME = 0.3;

  private DeckOverview() {}

  /**
   * The drawing, in metres, turned as the plan of the first field is.
   *
   * @param fields at least one
   */
  public static ScaledDrawing of(
      List<FieldBays> fields, Layout layout, UnitSystem units, String title) {
    PlanBuilder things = new PlanBuilder();
    PlanPlaces places = new PlanPlaces(fields.get(0).field());
    new PlanFraming(
            things, places, fields, Catchments.of(fields, Optional.of(layout), Optional.empty()))
        .draw(Optional.of(layout), List.of(), Set.of());
    for (FieldBays field : fields) {
      texts(things, places, field, PlanFraming.of(Optional.of(layout), field));
    }
    return new Annotated(things.build(title), PlanLegend.below(fields, units, Optional.empty()));
  }

  private static void texts(
      PlanBuilder plan, PlanPlaces places, FieldBays field, Optional<FieldLayout> layout) {
    List<Bay> bays = field.bays();
    Bay middle = bays.get(bays.size() / 2);
    plan.arrow(
        at(places, field, middle, ARROW_FROM), at(places, field, middle, ARROW_TO), PlanStyle.FALL);
    bay(plan, places, field, bays.get(0));
    bay(plan, places, field, bays.get(bays.size() - 1));
    plan.label(
        at(places, field, middle, FIELD_NAME),
        layout.map(FieldLayout::mark).orElse(field.field().id()),
        PlanBuilder.TEXT_MM,
        PlanItem.Anchor.MIDDLE,
        0,
        PlanStyle.TAG);
  }

  private static void bay(PlanBuilder plan, PlanPlaces places, FieldBays field, Bay bay) {
    plan.label(
        at(places, field, bay, BAY_NAME),
        bay.id(),
        PlanBuilder.SMALL_TEXT_MM,
        PlanItem.Anchor.MIDDLE,
        0,
        PlanStyle.TAG);
  }

  private static Vec2 at(PlanPlaces places, FieldBays field, Bay bay, double share) {
    return places.middle(field.field(), bay, share * bay.length());
  }
}
