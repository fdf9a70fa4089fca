package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.PanValue.HEAD_RAIL_LEAST_LEG;
import static org.underlee.kit.PanValue.JOIST_EDGE_DISTANCE;
import static org.underlee.kit.PanValue.NOTCH_CLEARANCE;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.RAIL_FASTENER_MARGIN;
import static org.underlee.kit.PanValue.RAIL_LEG;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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

  @Override
  public double under(Obstacle o) {
    return o.heights().from()
        - kit.get(PAN_HEM)
        - kit.get(CLEARANCE_ABOVE)
        + fall() * o.stretch().from();
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

  /** The gaps to cut in the rail legs. */
  @Override
  public List<Notch> notches(BayRun run, double seatHigh) {
    double clear = kit.get(NOTCH_CLEARANCE);
    return Obstacle.in(run).stream()
        .filter(o -> seatHigh <= under(o) + SeatRange.SAME)
        .filter(
            o ->
                seatHigh - fall() * o.stretch().from() + kit.get(RAIL_LEG) + clear
                    > o.heights().from() + SeatRange.SAME)
        .map(
            o ->
                new Notch(
                    new Interval(o.stretch().from() - clear, o.stretch().to() + clear),
                    o.heights().from() - clear))
        .toList();
  }

  @Override
  public String advice() {
    return "Shorten the run, move what is in the way, or use a kit with a taller rail leg.";
  }
}
