package org.underlee.layout;

import static org.underlee.kit.PanValue.NOTCH_CLEARANCE;
import static org.underlee.kit.PanValue.PAN_LAP;
import static org.underlee.kit.PanValue.RAIL_LEDGE;
import static org.underlee.kit.PanValue.RAIL_LEG;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Interval;
import org.underlee.kit.Items;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * How the dimensions of a side rail's pieces come about.
 *
 * @param perStation length along the rail for each metre of station
 * @param stretches of the pieces, along the rail
 */
record RailReckoning(FieldPlan plan, BayRun run, double perStation, List<Interval> stretches) {

  /**
   * The derivations of one piece.
   *
   * @param under how much lower it lies than the first, under the sheets of those uphill
   * @param lap by which it goes under the next one; 0 for the last
   */
  List<Derivation> of(int index, double under, double lap, List<RailGap> gaps) {
    Interval own = stretches.get(index);
    double start = run.railStart();
    RunReckoning reckoning = new RunReckoning(plan, run);
    List<Derivation> all = new ArrayList<>(List.of(length(index), width(), reckoning.fall()));
    all.addAll(
        reckoning.seats(
            start + own.from() / perStation,
            start + (own.to() + lap) / perStation,
            under,
            sheet()));
    all.addAll(notches(gaps, own));
    if (index < stretches.size() - 1) {
      all.addAll(lap(own, gaps.size() + 1));
    }
    return all;
  }

  private KitValue sheet() {
    return new KitValue(Items.SIDE_RAIL, plan.kit().item(Items.SIDE_RAIL).source());
  }

  private Derivation length(int index) {
    int count = stretches.size();
    RunReckoning reckoning = new RunReckoning(plan, run);
    Reckoning length = reckoning.railLength();
    double askew = perStation / Math.hypot(1, plan.fall());
    if (askew - 1 > SeatRange.SAME * SeatRange.SAME) {
      length.times("along a joist that runs askew", askew, reckoning.joists());
    }
    if (count > 1) {
      length.over(
          Words.of(
              "equal pieces, none longer with its lap than the stock's %s",
              Quantity.length(RailBuilder.longest(plan.kit()))),
          count,
          sheet());
      double moved = stretches.get(index).length() - stretches.get(count - 1).to() / count;
      if (Math.abs(moved) > SeatRange.SAME) {
        length.plus("so that no notch lies at a joint", moved, Reckoning.OWN);
      }
    }
    boolean last = index == count - 1;
    return (last ? length : length.plus(PAN_LAP)).gives(Dimension.LENGTH);
  }

  /** The leg is cut away where the ledge lies on the next piece's. */
  private List<Derivation> lap(Interval own, int ordinal) {
    Reckoning from =
        new Reckoning(plan.kit())
            .from(Words.of("where the next piece begins"), own.length(), Reckoning.OWN);
    return List.of(
        from.gives(Dimension.NOTCH_FROM, ordinal),
        new Reckoning(plan.kit()).from(PAN_LAP).gives(Dimension.NOTCH_LENGTH, ordinal),
        new Reckoning(plan.kit()).from(RAIL_LEG).gives(Dimension.NOTCH_DEPTH, ordinal));
  }

  private Derivation width() {
    return new Reckoning(plan.kit()).from(RAIL_LEDGE).gives(Dimension.WIDTH);
  }

  private List<Derivation> notches(List<RailGap> gaps, Interval own) {
    List<Derivation> all = new ArrayList<>();
    for (int i = 0; i < gaps.size(); i++) {
      RailGap gap = gaps.get(i);
      all.add(notchFrom(gap, own).gives(Dimension.NOTCH_FROM, i + 1));
      all.add(notchLength(gap, own).gives(Dimension.NOTCH_LENGTH, i + 1));
      all.add(notchDepth(gap).gives(Dimension.NOTCH_DEPTH, i + 1));
    }
    return all;
  }

  private Reckoning notchFrom(RailGap gap, Interval own) {
    double from = gap.stretch().from() - own.from();
    Reckoning r = new Reckoning(plan.kit());
    return from <= 0
        ? r.from(Words.of("goes on from the piece uphill"), from, Reckoning.OWN)
        : r.from(
                Words.of("near face of %s from the rail's high end", gap.obstacle().words()),
                from + plan.kit().get(NOTCH_CLEARANCE),
                gap.measured())
            .minus(NOTCH_CLEARANCE);
  }

  private Reckoning notchLength(RailGap gap, Interval own) {
    Reckoning r = new Reckoning(plan.kit());
    boolean whole = gap.stretch().from() > own.from() && gap.stretch().to() < own.to();
    return whole
        ? r.from(
                Words.of("length of %s along the rail", gap.obstacle().words()),
                gap.stretch().length() - 2 * plan.kit().get(NOTCH_CLEARANCE),
                gap.measured())
            .plus(NOTCH_CLEARANCE)
            .plus(NOTCH_CLEARANCE)
        : r.from(
            Words.of("part of the notch that falls on this piece"),
            gap.stretch().length(),
            gap.measured());
  }

  private Reckoning notchDepth(RailGap gap) {
    return new Reckoning(plan.kit())
        .from(RAIL_LEG)
        .minus(
            "from the seat up to the underside of what stands there",
            gap.height() + plan.kit().get(NOTCH_CLEARANCE),
            gap.measured())
        .plus(NOTCH_CLEARANCE);
  }
}
