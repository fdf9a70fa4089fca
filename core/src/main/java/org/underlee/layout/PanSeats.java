package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.PanValue.HEAD_RAIL_LEAST_LEG;
import static org.underlee.kit.PanValue.JOIST_EDGE_DISTANCE;
import static org.underlee.kit.PanValue.LEG_ROOM;
import static org.underlee.kit.PanValue.NOTCH_CLEARANCE;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.RAIL_FASTENER_MARGIN;
import static org.underlee.kit.PanValue.RAIL_FASTENER_SPACING;
import static org.underlee.kit.PanValue.RAIL_LEG;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.SeatRanges.Notch;
import org.underlee.units.Words;

/**
 * The seat of pans is the seat on the rails' ledges: the joist's depth and the head rail bound it
 * from above, the rail leg's reach from below (design, section 5).
 */
record PanSeats(Kit kit) implements SeatRules {

  private double fall() {
    return kit.fall();
  }

  @Override
  public List<SeatLimit> framing(BayRun run, List<Support> beamsPassed) {
    Bay bay = run.bay();
    double from = bay.stretch().from();
    // joists may be crowned or sag, so that any station may bind
    double[] stations = bay.turns(from, run.railEnd());
    double lowestTop =
        Arrays.stream(stations).map(v -> bay.joistTop(v) + fall() * v).min().orElseThrow();
    double highestBottom =
        Arrays.stream(stations).map(v -> bay.joistBottom(v) + fall() * v).max().orElseThrow();
    double headRail = kit.get(PAN_HEM) + kit.get(CLEARANCE_ABOVE) + kit.get(HEAD_RAIL_LEAST_LEG);
    double screw = kit.get(JOIST_EDGE_DISTANCE) + kit.get(RAIL_FASTENER_MARGIN);
    List<SeatLimit> limits = new ArrayList<>();
    limits.add(
        SeatLimit.atMost(
            bay.joistTop(from) - headRail + fall() * from,
            "the head rail needs room below the boards"));
    limits.add(
        SeatLimit.atMost(lowestTop - kit.get(RAIL_LEG), "the rail leg ends at the joist top"));
    limits.add(
        SeatLimit.atLeast(
            highestBottom + screw - kit.get(RAIL_LEG),
            "the rail leg must reach the joist above its edge distance"));
    for (Support beam : beamsPassed) {
      double over = over(beam.shape().heights().to(), beam.shape().along().to());
      limits.add(SeatLimit.atLeast(over, "the pan passes over a drop beam"));
    }
    return limits;
  }

  /**
   * The pan's edges pass under. Where a rail's leg is cut away over more than the spacing of
   * screws, what is left of the leg takes a screw as well.
   */
  @Override
  public double under(BayRun run, Obstacle o) {
    double pan = kit.get(PAN_HEM) + kit.get(CLEARANCE_ABOVE);
    double leg = isLong(o) && !crowded(run, o).isEmpty() ? screwed(kit) : 0;
    return o.heights().from() - Math.max(pan, leg) + fall() * o.stretch().from();
  }

  private boolean isLong(Obstacle o) {
    return gap(o).length() > kit.get(RAIL_FASTENER_SPACING) + SeatRange.SAME;
  }

  /** From the seat up to what stands there when one screw fits in what is left of the leg. */
  private static double screwed(Kit kit) {
    return 2 * kit.get(RAIL_FASTENER_MARGIN) + kit.get(NOTCH_CLEARANCE);
  }

  /** The rails that it leaves too little room beside: a leg there, a hand and a screw. */
  Set<RailSide> crowded(BayRun run, Obstacle o) {
    return Arrays.stream(RailSide.values())
        .filter(s -> o.beside(run.bay(), s) < kit.get(LEG_ROOM) - SeatRange.SAME)
        .collect(Collectors.toCollection(() -> EnumSet.noneOf(RailSide.class)));
  }

  private Interval gap(Obstacle o) {
    double clear = kit.get(NOTCH_CLEARANCE);
    return new Interval(o.stretch().from() - clear, o.stretch().to() + clear);
  }

  @Override
  public double over(Obstacle o) {
    return over(o.heights().to(), o.stretch().to());
  }

  /** The seat's height at the high end when rail and pan just pass over a height at a station. */
  private double over(double height, double station) {
    return height
        + kit.item(Items.SIDE_RAIL).thickness()
        + kit.get(CLEARANCE_ABOVE)
        + fall() * station;
  }

  /** The heights at and below which one more rail leg needs no notch. */
  @Override
  public List<SeatRange> cutFree(BayRun run) {
    return Obstacle.in(run).stream()
        .filter(o -> !crowded(run, o).isEmpty())
        .map(
            o -> {
              double top =
                  o.heights().from()
                      - kit.get(RAIL_LEG)
                      - kit.get(NOTCH_CLEARANCE)
                      + fall() * o.stretch().from();
              Words why = Words.of("the rail passes under %s without a notch", o.words());
              return new SeatRange(new Interval(top, top), run.bay().id(), why, why);
            })
        .toList();
  }

  /** The gaps to cut in the rail legs: only in those that the thing leaves no room beside. */
  @Override
  public List<Notch> notches(BayRun run, double seatHigh) {
    return beside(run, seatHigh)
        .map(
            o ->
                new Notch(
                    o, crowded(run, o), gap(o), o.heights().from() - kit.get(NOTCH_CLEARANCE)))
        .filter(n -> !n.rails().isEmpty())
        .toList();
  }

  /** What the pan passes under and whole legs would rise beside, or into. */
  Stream<Obstacle> beside(BayRun run, double seatHigh) {
    double leg = kit.get(RAIL_LEG) + kit.get(NOTCH_CLEARANCE);
    return Obstacle.in(run).stream()
        .filter(o -> seatHigh <= under(run, o) + SeatRange.SAME)
        .filter(
            o ->
                seatHigh - fall() * o.stretch().from() + leg > o.heights().from() + SeatRange.SAME);
  }

  @Override
  public String advice() {
    return "Shorten the run, move what is in the way, or use a kit with a taller rail leg.";
  }
}
