package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.geom.Vec2;
import org.underlee.layout.PartKind;
import org.underlee.picture.BaySection;
import org.underlee.picture.DeckPlan;
import org.underlee.picture.PlanPlaces;
import org.underlee.picture.PlanThings;
import org.underlee.report.RainInPlan;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;

/** Makes flat drawings of a result. */
final class DrawingMaker {
  private static final Set<PartKind> FILL_A_BAY =
      EnumSet.of(PartKind.PAN, PartKind.COLLAR_PIECE, PartKind.MEMBRANE, PartKind.SHEET);

  private DrawingMaker() {}

  static Optional<PlanThings> plan(Result r, UnitSystem units, Set<Item> selection) {
    return DeckPlan.of(
        r.survey().bays(),
        Optional.of(r.layout()),
        units,
        r.survey().source().file(),
        new DeckPlan.Marks(bays(r, selection), things(selection)),
        r.design().map(Design::proof).map(RainInPlan::of));
  }

  static Optional<PlanThings> section(
      Result r, Item.OfBay bay, UnitSystem units, Set<Item> selection) {
    return r.field(bay.field())
        .map(f -> BaySection.of(f, bay.bay(), r.layoutOf(bay.field()), units, things(selection)));
  }

  /** The bays that are selected, alone or with their field or deck. */
  static List<PlanPlaces.BayAt> bays(Result r, Set<Item> selection) {
    return r.survey().bays().stream()
        .flatMap(f -> f.bays().stream().map(b -> new PlanPlaces.BayAt(f.field().id(), b.id())))
        .filter(b -> isIn(b, selection, r))
        .toList();
  }

  private static boolean isIn(PlanPlaces.BayAt bay, Set<Item> selection, Result r) {
    return selection.contains(new Item.OfBay(bay.field(), bay.bay()))
        || selection.contains(new Item.OfField(bay.field()))
        || r.deckOf(bay.field()).filter(d -> selection.contains(new Item.OfDeck(d))).isPresent();
  }

  /** Ids of the parts and elements that are selected themselves. */
  static Set<String> things(Set<Item> selection) {
    return selection.stream()
        .flatMap(
            i ->
                i instanceof Item.OfPart p
                    ? Stream.of(p.id())
                    : i instanceof Item.OfElement e ? Stream.of(e.globalId()) : Stream.of())
        .collect(Collectors.toSet());
  }

  /**
   * What an area of a plan stands for: a sheet that fills its bay is taken for the bay.
   *
   * @param id of a part or an element
   */
  static Item inPlan(Result r, String id) {
    return r.part(id)
        .filter(p -> FILL_A_BAY.contains(p.kind()))
        .flatMap(p -> p.bay().<Item>map(b -> new Item.OfBay(p.field(), b)))
        .orElseGet(() -> item(r, id));
  }

  static Item item(Result r, String id) {
    return r.part(id).isPresent() ? new Item.OfPart(id) : new Item.OfElement(id);
  }

  /** Where things are in the plan; nowhere when they are not drawn. */
  static List<Vec2> reach(Result r, PlanThings plan, Set<Item> selection) {
    List<Vec2> all = new ArrayList<>(plan.reach(things(selection)));
    List<PlanPlaces.BayAt> bays = bays(r, selection);
    if (!bays.isEmpty()) {
      Map<PlanPlaces.BayAt, List<Vec2>> outlines = PlanPlaces.outlines(r.survey().bays());
      bays.forEach(b -> all.addAll(outlines.getOrDefault(b, List.of())));
    }
    return all;
  }
}
