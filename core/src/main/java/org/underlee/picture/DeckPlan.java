package org.underlee.picture;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.bay.FieldBays;
import org.underlee.geom.Vec2;
import org.underlee.layout.Layout;
import org.underlee.units.Lengths.UnitSystem;

/**
 * The decks in plan: joists, bays with their names and falls, blocking, crossings, gutter with its
 * falls, and outlets; and where it was proved, which outlet drains which bays, what is not drained,
 * and where rain gets through. Turned so that the first field falls down the sheet, house at the
 * top.
 */
public final class DeckPlan {
  private DeckPlan() {}

  /**
   * The drawing, in metres.
   *
   * @param layout the assembly, where there is one
   * @return empty when the model has no field to draw
   */
  public static Optional<ScaledDrawing> of(
      List<FieldBays> fields, Optional<Layout> layout, UnitSystem units, String title) {
    return of(fields, layout, units, title, Marks.NONE, Optional.empty()).map(PlanThings::drawing);
  }

  /**
   * What is marked in a plan.
   *
   * @param bays chosen ones
   * @param things chosen parts and elements, by id and GlobalId; elements that the plan does not
   *     draw are not marked
   */
  public record Marks(List<PlanPlaces.BayAt> bays, Set<String> things) {
    static final Marks NONE = new Marks(List.of(), Set.of());

    public Marks {
      bays = List.copyOf(bays);
      things = Set.copyOf(things);
    }
  }

  /**
   * As {@link #of(List, Optional, UnitSystem, String)}, with marks, the water, and what is where.
   *
   * @param rain where it goes, where that was proved
   */
  public static Optional<PlanThings> of(
      List<FieldBays> fields,
      Optional<Layout> layout,
      UnitSystem units,
      String title,
      Marks marks,
      Optional<PlanRain> rain) {
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    PlanPlaces places = new PlanPlaces(fields.get(0).field());
    Catchments catchments = Catchments.of(fields, layout, rain);
    PlanBuilder things = new PlanBuilder();
    new PlanFraming(things, places, fields, catchments).draw(layout, marks.bays(), marks.things());
    PlanDrawing framing = things.build(title);
    PlanTexts texts = new PlanTexts(fields, layout, places, units, catchments);
    Optional<PlanWater> water = rain.map(r -> PlanWater.of(r, places));
    Annotated plan =
        new Annotated(
            framing,
            (to, mm) -> {
              PlanRoom room = PlanRoom.beside(framing, mm);
              water.ifPresent(w -> w.hatch(to, mm));
              texts.write(to, room, mm);
              water.ifPresent(w -> w.write(to, room, mm));
              PlanLegend.below(fields, units, water).write(to, mm);
            });
    return Optional.of(new PlanThings(plan, things.things()));
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
}
