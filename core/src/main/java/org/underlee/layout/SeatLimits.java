package org.underlee.layout;

import static org.underlee.kit.PanValue.CLEARANCE_ABOVE;
import static org.underlee.kit.PanValue.HEAD_RAIL_LEAST_LEG;
import static org.underlee.kit.PanValue.JOIST_EDGE_DISTANCE;
import static org.underlee.kit.PanValue.NOTCH_CLEARANCE;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.RAIL_FASTENER_MARGIN;
import static org.underlee.kit.PanValue.RAIL_LEG;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.bay.Block;
import org.underlee.bay.Crossing;
import org.underlee.bay.Way;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.units.Lengths;

/**
 * What bounds the seat height at the high end, {@code h0}, for one bay. The seat at a station is
 * {@code h0 − s·v}; every limit is a bound on it at one station, so each is a bound on {@code h0}
 * (design, section 5).
 */
record SeatLimits(Kit kit) {

  /** Something over the pan: blocking, or a crossing that does not go through it. */
  private record Overhead(Interval stretch, double bottom, String what) {}

  private double fall() {
    return kit.fall();
  }

  /** The lowest of the limits from above. */
  SeatLimit highest(BayRun run) {
    List<SeatLimit> limits = new ArrayList<>();
    double from = run.bay().stretch().from();
    double top = run.bay().joistBottom(from) + run.bay().depth();
    double headRail = kit.get(PAN_HEM) + kit.get(CLEARANCE_ABOVE) + kit.get(HEAD_RAIL_LEAST_LEG);
    limits.add(
        new SeatLimit(
            top - headRail + fall() * from,
            run.bay().id() + ": the head rail needs room below the boards"));
    limits.add(
        new SeatLimit(
            top - kit.get(RAIL_LEG) + fall() * from,
            run.bay().id() + ": the rail leg ends at the joist top"));
    for (Overhead over : overheads(run)) {
      limits.add(
          new SeatLimit(
              over.bottom
                  - kit.get(PAN_HEM)
                  - kit.get(CLEARANCE_ABOVE)
                  + fall() * over.stretch.from(),
              run.bay().id() + ": the pan passes under " + over.what));
    }
    return limits.stream().min(Comparator.comparingDouble(SeatLimit::height)).orElseThrow();
  }

  /** The highest of the limits from below. */
  SeatLimit lowest(BayRun run, List<Support> beamsPassed) {
    double end = run.railEnd();
    double bottom = run.bay().joistBottom(end);
    List<SeatLimit> limits = new ArrayList<>();
    limits.add(
        new SeatLimit(
            bottom
                + kit.get(JOIST_EDGE_DISTANCE)
                + kit.get(RAIL_FASTENER_MARGIN)
                - kit.get(RAIL_LEG)
                + fall() * end,
            run.bay().id() + ": the rail leg must reach the joist above its edge distance"));
    for (Support beam : beamsPassed) {
      limits.add(
          new SeatLimit(
              beam.shape().heights().to()
                  + kit.item(Items.SIDE_RAIL).thickness()
                  + kit.get(CLEARANCE_ABOVE)
                  + fall() * beam.shape().along().to(),
              run.bay().id() + ": the pan passes over a drop beam"));
    }
    return limits.stream().max(Comparator.comparingDouble(SeatLimit::height)).orElseThrow();
  }

  /** Seat heights at and below which one more rail leg needs no notch. */
  List<SeatLimit> notchFree(BayRun run) {
    return overheads(run).stream()
        .map(
            o ->
                new SeatLimit(
                    o.bottom
                        - kit.get(RAIL_LEG)
                        - kit.get(NOTCH_CLEARANCE)
                        + fall() * o.stretch.from(),
                    run.bay().id() + ": the rail passes under " + o.what + " without a notch"))
        .toList();
  }

  /** The gaps to cut in the rail legs, as stations and the height they start at. */
  List<Notch> notches(BayRun run, double seatHigh) {
    double clear = kit.get(NOTCH_CLEARANCE);
    return overheads(run).stream()
        .filter(
            o -> seatHigh - fall() * o.stretch.from() + kit.get(RAIL_LEG) + clear > o.bottom + 1e-9)
        .map(
            o ->
                new Notch(
                    new Interval(o.stretch.from() - clear, o.stretch.to() + clear),
                    o.bottom - clear))
        .toList();
  }

  /** A gap in a rail leg: from the given height up, over the stations. */
  record Notch(Interval stretch, double bottom) {}

  private static List<Overhead> overheads(BayRun run) {
    List<Overhead> found = new ArrayList<>();
    for (Block block : run.bay().blocking()) {
      if (block.stretch().from() < run.railEnd()) {
        double bottom = block.bottom() + run.bay().joistBottom(block.stretch().middle());
        found.add(new Overhead(block.stretch(), bottom, "blocking " + at(block.at())));
      }
    }
    for (Crossing c : run.bay().crossings()) {
      if (c.way() != Way.THROUGH && c.stretch().from() < run.railEnd()) {
        String what = c.element().ifcClass() + " #" + c.element().instance() + " " + at(c.at());
        found.add(new Overhead(c.stretch(), c.heights().from(), what));
      }
    }
    return found;
  }

  private static String at(double station) {
    return "at " + Lengths.millimetres(station);
  }
}
