package org.underlee.layout;

import static org.underlee.kit.PanValue.JOIST_EDGE_DISTANCE;
import static org.underlee.kit.PanValue.RAIL_FASTENER_MARGIN;
import static org.underlee.kit.PanValue.RAIL_FASTENER_SPACING;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Place;
import org.underlee.geom.Interval;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Says where a rail cannot be held: below what is left of a leg in a notch there may be no place
 * for a screw that keeps its distances, so a notch may be no longer than screws may be apart. The
 * limit is the kit's own spacing.
 */
final class LongNotches {
  private LongNotches() {}

  /** The longest stretch of a bay's rails without a place for a screw, where it is too long. */
  static Optional<Finding> of(FieldPlan plan, BayRun run) {
    double limit = plan.kit().get(RAIL_FASTENER_SPACING);
    return bare(plan, run).stream()
        .map(Interval::length)
        .max(Comparator.naturalOrder())
        .filter(length -> length > limit + SeatRange.SAME)
        .map(length -> finding(plan, run, length, limit));
  }

  /** Stretches of notches that take no screw; those that meet count as one. */
  private static List<Interval> bare(FieldPlan plan, BayRun run) {
    Interval rail = new Interval(run.railStart(), run.railEnd());
    List<Interval> joined = new ArrayList<>();
    SeatRanges.with(plan.kit()).notches(run, plan.seatHigh()).stream()
        .filter(n -> !takesScrew(plan, run, n))
        .map(n -> n.stretch().meet(rail))
        .sorted(Comparator.comparingDouble(Interval::from))
        .forEach(
            n -> {
              int last = joined.size() - 1;
              if (last >= 0 && n.from() <= joined.get(last).to()) {
                joined.set(last, joined.get(last).join(n));
              } else {
                joined.add(n);
              }
            });
    return joined;
  }

  private static boolean takesScrew(FieldPlan plan, BayRun run, SeatRanges.Notch notch) {
    double highest = notch.bottom() - plan.kit().get(RAIL_FASTENER_MARGIN);
    double lowest =
        run.bay().joistBottom(notch.stretch().middle()) + plan.kit().get(JOIST_EDGE_DISTANCE);
    return highest >= lowest - SeatRange.SAME;
  }

  private static Finding finding(FieldPlan plan, BayRun run, double length, double limit) {
    Place place = run.bay().left().plies().get(0).element().place();
    return Finding.measured(
            LayoutRules.NOTCHED_LONG,
            place,
            Words.of("the rails are notched so low that no screw holds them over that length."),
            Measure.lengths(length, limit),
            "Lower the seat with --seat so that the rails pass below, move what is in the way, or"
                + " leave the bay open.")
        .about(
            new Subject(
                plan.bays().field().id(),
                run.bay().id(),
                place,
                Optional.of(Quantity.length(length))));
  }
}
