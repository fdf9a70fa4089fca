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
import org.underlee.units.Words;

/**
 * The seat heights that serve a bay, exactly. The seat at a station is {@code h0 − s·v}; each limit
 * bounds it at one station, so it bounds the height {@code h0} at the high end: the joist's depth
 * and the head rail from above, the rail leg's reach from below (design, section 5). An obstacle
 * forbids the heights between passing under and passing over it. What is left is a few ranges.
 */
record SeatRanges(Kit kit) {

  private double fall() {
    return kit.fall();
  }

  /** The ranges, lowest first; none when the bay cannot be served. */
  List<SeatRange> of(BayRun run, List<Support> beamsPassed) {
    SeatRange whole = withoutObstacles(run, beamsPassed);
    List<SeatRange> ranges = new ArrayList<>();
    if (whole.heights().to() >= whole.heights().from() - SeatRange.SAME) {
      ranges.add(whole);
    }
    for (Obstacle obstacle : Obstacle.in(run)) {
      List<SeatRange> left = new ArrayList<>();
      for (SeatRange range : ranges) {
        left.addAll(without(range, obstacle));
      }
      ranges = left;
    }
    return ranges;
  }

  /** Every limit on the seat in a bay; no height of {@link #of} breaks one. */
  List<SeatLimit> limits(BayRun run, List<Support> beamsPassed) {
    List<SeatLimit> limits = framing(run, beamsPassed);
    for (Obstacle o : Obstacle.in(run)) {
      Interval forbidden = new Interval(under(o), over(o.heights().to(), o.stretch().to()));
      limits.add(new SeatLimit(forbidden, Words.of("the pan passes under or over %s", o.words())));
    }
    return limits;
  }

  /** What the framing alone allows; its ends are the wrong way round when it allows nothing. */
  SeatRange withoutObstacles(BayRun run, List<Support> beamsPassed) {
    List<SeatLimit> limits = framing(run, beamsPassed);
    SeatLimit floor =
        limits.stream()
            .filter(SeatLimit::isFloor)
            .reduce((a, b) -> b.forbidden().to() > a.forbidden().to() ? b : a)
            .orElseThrow();
    SeatLimit ceiling =
        limits.stream()
            .filter(SeatLimit::isCeiling)
            .reduce((a, b) -> b.forbidden().from() < a.forbidden().from() ? b : a)
            .orElseThrow();
    return new SeatRange(
        new Interval(floor.forbidden().to(), ceiling.forbidden().from()),
        run.bay().id(),
        floor.why(),
        ceiling.why());
  }

  private List<SeatLimit> framing(BayRun run, List<Support> beamsPassed) {
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

  private List<SeatRange> without(SeatRange range, Obstacle o) {
    double under = under(o);
    double over = over(o.heights().to(), o.stretch().to());
    Interval h = range.heights();
    List<SeatRange> left = new ArrayList<>();
    if (h.from() <= under + SeatRange.SAME) {
      left.add(
          under < h.to()
              ? new SeatRange(
                  new Interval(h.from(), under),
                  range.bay(),
                  range.bottomWhy(),
                  Words.of("the pan passes under %s", o.words()))
              : range);
    }
    if (over <= h.to() + SeatRange.SAME && under < h.to()) {
      left.add(
          over > h.from()
              ? new SeatRange(
                  new Interval(over, h.to()),
                  range.bay(),
                  Words.of("the pan passes over %s", o.words()),
                  range.topWhy())
              : range);
    }
    return left;
  }

  private double under(Obstacle o) {
    return o.heights().from()
        - kit.get(PAN_HEM)
        - kit.get(CLEARANCE_ABOVE)
        + fall() * o.stretch().from();
  }

  /** The seat's height at the high end when rail and pan just pass over a height at a station. */
  private double over(double height, double station) {
    return height
        + kit.item(Items.SIDE_RAIL).thickness()
        + kit.get(CLEARANCE_ABOVE)
        + fall() * station;
  }

  /** The heights at and below which one more rail leg needs no notch. */
  List<SeatRange> notchFree(BayRun run) {
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
  List<Notch> notches(BayRun run, double seatHigh) {
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

  /** A gap in a rail leg: from the given height up, over the stations. */
  record Notch(Interval stretch, double bottom) {}
}
