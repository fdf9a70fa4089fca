package org.underlee.layout;

import static org.underlee.kit.PanValue.JOIST_EDGE_DISTANCE;
import static org.underlee.kit.PanValue.RAIL_FASTENER_MARGIN;
import static org.underlee.kit.PanValue.RAIL_FASTENER_SPACING;

import java.util.ArrayList;
import java.util.Arrays;
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

  /** The longest stretch of one of a bay's rails without a place for a screw, where too long. */
  static Optional<Finding> of(FieldPlan plan, BayRun run) {
    double limit = plan.kit().get(RAIL_FASTENER_SPACING);
    return Arrays.stream(RailSide.values())
        .flatMap(side -> bare(plan, run, side).stream())
        .map(Interval::length)
        .max(Comparator.naturalOrder())
        .filter(length -> length > limit + SeatRange.SAME)
        .map(length -> finding(plan, run, length, limit));
  }

  /** Stretches of notches that take no screw; those that meet count as one. */
  private static List<Interval> bare(FieldPlan plan, BayRun run, RailSide side) {
    Interval rail = new Interval(run.railStart(), run.railEnd());
    List<Interval> joined = new ArrayList<>();
    SeatRanges.with(plan.kit()).notches(run, plan.seatHigh()).stream()
        .filter(n -> n.rails().contains(side))
        .map(n -> bare(plan, run, n).meet(rail))
        .filter(n -> !n.isEmpty())
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

  /**
   * The part of a notch that takes no screw: all of it where the joist's edge is too near, else
   * down to where the seat has fallen far enough below what is left of the leg.
   */
  private static Interval bare(FieldPlan plan, BayRun run, SeatRanges.Notch notch) {
    double margin = plan.kit().get(RAIL_FASTENER_MARGIN);
    double highest = notch.bottom() - margin;
    double edge =
        run.bay().joistBottom(notch.stretch().middle()) + plan.kit().get(JOIST_EDGE_DISTANCE);
    if (highest < edge - SeatRange.SAME) {
      return notch.stretch();
    }
    double room = (plan.seatHigh() + margin - highest - SeatRange.SAME) / plan.fall();
    return notch.stretch().meet(new Interval(notch.stretch().from(), room));
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
