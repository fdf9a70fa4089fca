package org.underlee.layout;

import static org.underlee.kit.PanValue.PAN_WIDEST;

import java.util.List;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Place;
import org.underlee.kit.Kit;
import org.underlee.kit.PanValue;
import org.underlee.units.Lengths;

/**
 * Says why a bay is left open, with the numbers and what to do.
 *
 * @param field {@code deck-1/field-1}
 */
record OpenBay(String field, Kit kit) {
  Finding width(Bay bay, double measured, PanValue value) {
    boolean wide = value == PAN_WIDEST;
    double limit = kit.get(value);
    return Finding.measured(
        wide ? LayoutRules.BAY_TOO_WIDE : LayoutRules.BAY_TOO_NARROW,
        place(bay),
        name(bay)
            + " is "
            + Lengths.millimetres(measured)
            + " clear; kit "
            + kit.id()
            + (wide ? " spans at most " : " needs at least ")
            + Lengths.millimetres(limit)
            + ". The bay is left open.",
        millimetres(measured, limit),
        wide
            ? "Choose a kit with wider pans, or have a joist added by the designer."
            : "Close the gap with tape over the joist tops, or leave it open on purpose.");
  }

  Finding onASlant(Bay bay, double slant) {
    return Finding.measured(
        LayoutRules.ON_A_SLANT,
        place(bay),
        name(bay)
            + " begins on a slant: one side of it "
            + Lengths.millimetres(slant)
            + " further out than its middle, as at a hip joist. The kit's head rails and pans are cut"
            + " square; the bay is left open.",
        millimetres(slant, FieldPlanner.MOST_SLANT),
        "Lay a membrane over these bays, or have them framed square.");
  }

  Finding runTooShort(BayRun run) {
    return Finding.measured(
        LayoutRules.RUN_TOO_SHORT,
        place(run.bay()),
        name(run.bay()) + " has a clear run of only " + Lengths.millimetres(run.run()) + ".",
        millimetres(run.run(), FieldPlanner.SHORTEST_RUN),
        "Leave the bay open, or drain it with a flashing.");
  }

  Finding pipeAtEdge(Bay bay, Crossing c) {
    return Finding.of(
        LayoutRules.PIPE_AT_EDGE,
        c.element().place(),
        name(bay)
            + ": "
            + c.element().ifcClass()
            + " #"
            + c.element().instance()
            + " goes through so near the pan's edge or end that no sheet is left for a collar. The"
            + " bay is left open.",
        "Move the pipe toward the middle of the bay, or box the bay out around it.");
  }

  Finding endsBefore(Bay bay, LowEnd end) {
    return Finding.of(
        LayoutRules.ENDS_BEFORE_BEAM,
        place(bay),
        name(bay) + " does not reach " + end.words() + ", where the gutter runs. It is left open.",
        "Close the bay above with boards that do not leak, or drain it with a gutter of its own.");
  }

  Finding noGutter(BayRun run) {
    return Finding.of(
        LayoutRules.NO_GUTTER_BELOW,
        place(run.bay()),
        name(run.bay())
            + " ends "
            + Lengths.millimetres(run.lowFace())
            + " from the field's high end, too far from the line of the gutter to drip into it. It"
            + " is left open.",
        "Drain the bay with a gutter of its own.");
  }

  Finding noSeat(BayRun run, LowEnd end, FieldPlan best) {
    SeatRanges seats = new SeatRanges(kit);
    List<SeatRange> own = seats.of(run, end.passed());
    SeatRange framing = seats.withoutObstacles(run, end.passed());
    String why =
        own.isEmpty()
            ? "no seat height serves it at a fall of "
                + Lengths.fall(kit.fall())
                + ". By the framing alone the seat at the high end may lie from "
                + words(framing)
                + inTheWay(run)
            : "the field's seat is at "
                + Lengths.millimetres(best.seatHigh())
                + " from the joist bottom, which serves more bays; this bay alone allows "
                + own.stream().map(OpenBay::words).collect(Collectors.joining(" or "));
    return Finding.measured(
        LayoutRules.NO_SEAT,
        place(run.bay()),
        name(run.bay()) + " is left open: " + why + ".",
        millimetres(framing.heights().to(), framing.heights().from()),
        "Shorten the run, move what is in the way, or use a kit with a taller rail leg.");
  }

  private static String words(SeatRange range) {
    return Lengths.millimetres(range.heights().from())
        + " ("
        + range.bottomWhy()
        + ") to "
        + Lengths.millimetres(range.heights().to())
        + " ("
        + range.topWhy()
        + ")";
  }

  private static String inTheWay(BayRun run) {
    List<Obstacle> obstacles = Obstacle.in(run);
    return obstacles.isEmpty()
        ? ""
        : ", and in the way are "
            + obstacles.stream().map(Obstacle::what).collect(Collectors.joining(", "));
  }

  private static Measure millimetres(double measured, double limit) {
    return new Measure(measured * 1000, limit * 1000, "mm");
  }

  private String name(Bay bay) {
    return field + " " + bay.id();
  }

  private static Place place(Bay bay) {
    return bay.left().plies().get(0).element().place();
  }
}
