package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;
import org.underlee.kit.Kit;
import org.underlee.units.Words;

/**
 * The seat heights that serve a bay, exactly. The seat at a station is {@code h0 − s·v}; each limit
 * bounds it at one station, so it bounds the height {@code h0} at the high end (design, section 5):
 * {@link SeatRules} gives those of a family. An obstacle forbids the heights between passing under
 * and passing over it. What is left is a few ranges.
 */
record SeatRanges(SeatRules rules) {

  static SeatRanges with(Kit kit) {
    return new SeatRanges(SeatRules.of(kit));
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
        left.addAll(without(run, range, obstacle));
      }
      ranges = left;
    }
    return ranges;
  }

  /** Every limit on the seat in a bay; no height of {@link #of} breaks one. */
  List<SeatLimit> limits(BayRun run, List<Support> beamsPassed) {
    List<SeatLimit> limits = new ArrayList<>(rules.framing(run, beamsPassed));
    for (Obstacle o : Obstacle.in(run)) {
      Interval forbidden = new Interval(rules.under(run, o), rules.over(o));
      limits.add(new SeatLimit(forbidden, passes(past(forbidden), o)));
    }
    return limits;
  }

  private Words passes(String way, Obstacle o) {
    return Words.of("the %s passes %s %s", rules.kit().family().piece(), way, o.words());
  }

  private static String past(Interval forbidden) {
    if (forbidden.from() == Double.NEGATIVE_INFINITY) {
      return "over";
    }
    return forbidden.to() == Double.POSITIVE_INFINITY ? "under" : "under or over";
  }

  /** What the framing alone allows; its ends are the wrong way round when it allows nothing. */
  SeatRange withoutObstacles(BayRun run, List<Support> beamsPassed) {
    List<SeatLimit> limits = rules.framing(run, beamsPassed);
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

  private List<SeatRange> without(BayRun run, SeatRange range, Obstacle o) {
    double under = rules.under(run, o);
    double over = rules.over(o);
    Interval h = range.heights();
    List<SeatRange> left = new ArrayList<>();
    if (h.from() <= under + SeatRange.SAME) {
      left.add(
          under < h.to()
              ? new SeatRange(
                  new Interval(h.from(), under), range.bay(), range.bottomWhy(), passes("under", o))
              : range);
    }
    if (over <= h.to() + SeatRange.SAME && under < h.to()) {
      left.add(
          over > h.from()
              ? new SeatRange(
                  new Interval(over, h.to()), range.bay(), passes("over", o), range.topWhy())
              : range);
    }
    return left;
  }

  /** The heights at and below which one more part is cut less. */
  List<SeatRange> cutFree(BayRun run) {
    return rules.cutFree(run);
  }

  /** The gaps to cut in parts that the seat runs through. */
  List<Notch> notches(BayRun run, double seatHigh) {
    return rules.notches(run, seatHigh);
  }

  /**
   * A gap in a rail leg: from the given height up, over the stations.
   *
   * @param rails those that are cut
   */
  record Notch(Obstacle obstacle, Set<RailSide> rails, Interval stretch, double bottom) {
    Notch {
      rails = Set.copyOf(rails);
    }
  }
}
