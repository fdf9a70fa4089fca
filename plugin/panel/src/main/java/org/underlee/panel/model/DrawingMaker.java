package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.picture.BaySection;
import org.underlee.picture.DeckPlan;
import org.underlee.picture.PlanPlaces;
import org.underlee.picture.ScaledDrawing;
import org.underlee.report.RainInPlan;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;

/** Makes flat drawings of a result. */
final class DrawingMaker {
  private DrawingMaker() {}

  static Optional<ScaledDrawing> plan(Result r, UnitSystem units, Set<Item> selection) {
    List<PlanPlaces.BayAt> chosen =
        selection.stream()
            .filter(Item.OfBay.class::isInstance)
            .map(Item.OfBay.class::cast)
            .map(b -> new PlanPlaces.BayAt(b.field(), b.bay()))
            .toList();
    return DeckPlan.of(
        r.survey().bays(),
        Optional.of(r.layout()),
        units,
        r.survey().source().file(),
        chosen,
        r.design().map(Design::proof).map(RainInPlan::of));
  }

  static Optional<ScaledDrawing> section(Result r, Item.OfBay bay, UnitSystem units) {
    return r.field(bay.field())
        .map(f -> BaySection.of(f, bay.bay(), r.layoutOf(bay.field()), units));
  }
}
