package org.underlee.layout;

import static org.underlee.kit.PanValue.LEG_ROOM;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Place;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Says where a leg is left whole though something in the bay stands as high as it: that rests on
 * the thing staying where the model has it.
 */
final class LegsLeftWhole {
  private LegsLeftWhole() {}

  static List<Finding> of(FieldPlan plan, BayRun run) {
    PanSeats seats = new PanSeats(plan.kit());
    return seats
        .beside(run, plan.seatHigh())
        .flatMap(o -> of(plan, run, o, seats.crowded(run, o)).stream())
        .toList();
  }

  private static Optional<Finding> of(
      FieldPlan plan, BayRun run, Obstacle o, Set<RailSide> crowded) {
    return Arrays.stream(RailSide.values())
        .filter(side -> !crowded.contains(side))
        .map(side -> o.beside(run.bay(), side))
        .min(Double::compare)
        .map(room -> finding(plan, run, o, room, crowded.isEmpty()));
  }

  private static Finding finding(
      FieldPlan plan, BayRun run, Obstacle o, double room, boolean both) {
    Place place = o.element().place();
    return Finding.measured(
            LayoutRules.BESIDE_RAIL,
            place,
            Words.of(
                both
                    ? "what stands in the bay leaves both rails room for a hand and a screw: their"
                        + " legs rise beside it whole."
                    : "what stands at one side of the bay leaves the rail at the other side room for"
                        + " a hand and a screw: only the rail that it stands at is notched for it."),
            Measure.lengths(room, plan.kit().get(LEG_ROOM)),
            "Nothing to do while it stays there. If it is moved toward a joist, lay the deck out"
                + " again.")
        .about(
            new Subject(
                plan.bays().field().id(),
                run.bay().id(),
                place,
                Optional.of(Quantity.length(room))));
  }
}
