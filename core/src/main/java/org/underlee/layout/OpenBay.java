package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Fix;
import org.underlee.finding.Place;
import org.underlee.geom.Interval;
import org.underlee.kit.Kit;
import org.underlee.kit.KitNumber;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Says why a bay is left open, with the numbers and what to do. The bay is the finding's subject,
 * so that bays left open for one reason are told in one line.
 *
 * @param field {@code deck-1/field-1}
 */
record OpenBay(String field, Kit kit) {
  /**
   * @param wide whether the bay is too wide, else too narrow
   */
  Finding width(Bay bay, double measured, KitNumber value, boolean wide) {
    double limit = kit.get(value);
    return Finding.measured(
            wide ? LayoutRules.BAY_TOO_WIDE : LayoutRules.BAY_TOO_NARROW,
            place(bay),
            Words.of(
                wide
                    ? "wider than the %s that kit %s spans; left open."
                    : "narrower than the %s that kit %s needs; left open.",
                Quantity.length(limit),
                kit.id()),
            Measure.lengths(measured, limit),
            wide
                ? "Choose a kit with wider pans, or have a joist added by the designer."
                : "Close the gap with tape over the joist tops, or leave it open on purpose.")
        .about(subject(bay, measured));
  }

  Finding onPurpose(Bay bay) {
    return Finding.of(
            LayoutRules.LEFT_OPEN,
            place(bay),
            Words.of("left open on purpose, as you asked."),
            "Nothing to do; rain on it falls through.")
        .about(new Subject(field, bay.id(), place(bay), Optional.empty()));
  }

  Finding outsideZone(Bay bay) {
    return Finding.of(
            LayoutRules.OUTSIDE_ZONE,
            place(bay),
            Words.of("over nothing that must stay dry; left open."),
            "Nothing to do; draw the dry zone larger where rain must not fall through.")
        .about(new Subject(field, bay.id(), place(bay), Optional.empty()));
  }

  Finding onASlant(Bay bay, double slant) {
    return Finding.measured(
            LayoutRules.ON_A_SLANT,
            place(bay),
            Words.of(
                "begins on a slant: one side starts that much further out than its middle, as at a"
                    + " hip joist. The kit's head rails and pans are cut square; left open."),
            Measure.lengths(slant, BayFit.MOST_SLANT),
            "Lay a membrane over these bays, or have them framed square.")
        .about(subject(bay, slant));
  }

  Finding runTooShort(BayRun run) {
    return Finding.measured(
            LayoutRules.RUN_TOO_SHORT,
            place(run.bay()),
            Words.of(
                "a clear run shorter than the %s that a pan needs; left open.",
                Quantity.length(Bay.SHORTEST_RUN)),
            Measure.lengths(run.run(), Bay.SHORTEST_RUN),
            "Leave the bay open, or drain it with a flashing.")
        .about(subject(run.bay(), run.run()));
  }

  Finding pipeAtEdge(Bay bay, Crossing c) {
    return Finding.of(
            LayoutRules.PIPE_AT_EDGE,
            c.element().place(),
            Words.of(
                "%s #%s goes through so near the pan's edge or end that no sheet is left for a"
                    + " collar; left open.",
                c.element().ifcClass(), c.element().instance()),
            "Move the pipe toward the middle of the bay, or box the bay out around it.")
        .about(new Subject(field, bay.id(), c.element().place(), Optional.empty()));
  }

  Finding pipeThrough(Bay bay, Crossing c) {
    return Finding.of(
            LayoutRules.PIPE_THROUGH,
            c.element().place(),
            Words.of(
                "%s #%s goes through, and kit %s has no piece to close around it; left open.",
                c.element().ifcClass(), c.element().instance(), kit.id()),
            "Choose a kit of pans, which has collars; or box the bay out around the pipe.")
        .about(new Subject(field, bay.id(), c.element().place(), Optional.empty()));
  }

  Finding endsBefore(Bay bay, LowEnd end) {
    return Finding.of(
            LayoutRules.ENDS_BEFORE_BEAM,
            place(bay),
            Words.of("does not reach %s, where the gutter runs; left open.", end.words()),
            "Close the bay above with boards that do not leak, or drain it with a gutter of its"
                + " own.")
        .about(new Subject(field, bay.id(), place(bay), Optional.empty()));
  }

  Finding noGutter(BayRun run) {
    return Finding.of(
            LayoutRules.NO_GUTTER_BELOW,
            place(run.bay()),
            Words.of(
                "ends that far from the field's high end, too far from the line of the gutter to"
                    + " drip into it; left open."),
            "Drain the bay with a gutter of its own.")
        .about(subject(run.bay(), run.lowFace()));
  }

  /**
   * The bay could be served, but not at the field's height.
   *
   * @param wished whether the user asked for that height; else it is the one that serves most
   */
  Finding notAtThisSeat(BayRun run, FieldPlan best, boolean wished) {
    SeatRanges seats = SeatRanges.with(kit);
    List<SeatRange> own = seats.of(run, best.lowEnd().passed());
    Interval framing = seats.withoutObstacles(run, best.lowEnd().passed()).heights();
    Words why =
        Words.of(
            wished
                ? "the seat that you asked for, %s from the joist bottom, is not among the heights"
                    + " that this bay allows: %s; left open."
                : "the field's seat is at %s from the joist bottom, which serves more bays; this"
                    + " bay alone allows %s; left open.",
            Quantity.length(best.seatHigh()),
            Words.join(" or ", own.stream().map(OpenBay::words).toList()));
    return Finding.measured(
            LayoutRules.NO_SEAT,
            place(run.bay()),
            why,
            Measure.lengths(framing.to(), framing.from()),
            advice())
        .about(new Subject(field, run.bay().id(), place(run.bay()), Optional.empty()));
  }

  /** No height at all serves the bay. */
  Finding noSeat(BayRun run, Conflict conflict, List<Alternative> alternatives) {
    Words why =
        Words.of(
            "no seat height serves it at a fall of %s. At the high end the seat must be %s from"
                + " the joist bottom: these limits conflict, and without any one of them a height is"
                + " left; left open.",
            Quantity.fall(kit.fall()), conflict.words());
    Interval lowest = conflict.limits().get(0).forbidden();
    Interval highest = conflict.limits().get(conflict.limits().size() - 1).forbidden();
    return Finding.measured(
            LayoutRules.NO_SEAT,
            place(run.bay()),
            why,
            Measure.lengths(highest.from(), lowest.to()),
            fix(alternatives))
        .about(new Subject(field, run.bay().id(), place(run.bay()), Optional.empty()));
  }

  private Fix fix(List<Alternative> alternatives) {
    if (alternatives.isEmpty()) {
      return Fix.of(advice());
    }
    Words words =
        Words.of(
            "What would serve it: %s. Else: %s",
            Words.join("; ", alternatives.stream().map(Alternative::words).toList()), advice());
    return alternatives.stream()
        .filter(a -> a.option().isPresent())
        .findFirst()
        .map(a -> Fix.with(words, new Fix.Action(a.option().stream().toList(), a.price())))
        .orElse(Fix.of(words));
  }

  private String advice() {
    return SeatRules.of(kit).advice();
  }

  /** A range that no tape shows is told to the nearest: inwards, its ends would pass each other. */
  private static Words words(SeatRange range) {
    boolean shown = range.heights().length() > 2 * Lengths.TAPE_MARK;
    Quantity from = Quantity.length(range.heights().from());
    Quantity to = Quantity.length(range.heights().to());
    return Words.of(
        "%s (%s) to %s (%s)",
        shown ? from.atLeast() : from, range.bottomWhy(), shown ? to.atMost() : to, range.topWhy());
  }

  private Subject subject(Bay bay, double measured) {
    return new Subject(field, bay.id(), place(bay), Optional.of(Quantity.length(measured)));
  }

  private static Place place(Bay bay) {
    return bay.left().plies().get(0).element().place();
  }
}
