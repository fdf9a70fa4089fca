package org.underlee.layout;

import static org.underlee.kit.DrainValue.FLASHING_LAP;
import static org.underlee.kit.DrainValue.RUN_PER_FALL;
import static org.underlee.kit.SheetValue.BATTEN_WIDTH;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Interval;
import org.underlee.kit.Kit;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * The cap over the heads of ribbed sheets that fall away from one high line: it lies on the sheets'
 * crests between the first battens of both sides, in pieces that lap.
 */
record SheetRidgeCap(FieldPlan plan, PartNames names) {
  /** Kept between the cap and the battens beside it. */
  private static final double PLAY = 0.002;

  /**
   * @param group of bays of which some go on beyond the high line
   * @param first ordinal of the first piece
   */
  List<Part> parts(SheetGroup group, int first) {
    List<Part> parts = new ArrayList<>();
    for (Interval across : stretches(group)) {
      List<Interval> pieces =
          new Laps(longest(), plan.kit().get(FLASHING_LAP)).split(across, false);
      for (int i = 0; i < pieces.size(); i++) {
        parts.add(part(group, across, pieces, i, first + parts.size()));
      }
    }
    return parts;
  }

  private double longest() {
    return BackFlashing.longest(plan.kit());
  }

  /** Where bays side by side go on beyond the high line, out to the middles of their joists. */
  private List<Interval> stretches(SheetGroup group) {
    List<Interval> stretches = new ArrayList<>();
    for (BayRun run : group.runs()) {
      if (plan.goesOnBeyond(run)) {
        Interval own = new Interval(run.bay().left().centre(0), run.bay().right().centre(0));
        int last = stretches.size() - 1;
        boolean goesOn = last >= 0 && own.from() - stretches.get(last).to() < SeatRange.SAME;
        if (goesOn) {
          stretches.set(last, stretches.get(last).join(own));
        } else {
          stretches.add(own);
        }
      }
    }
    return stretches;
  }

  private Part part(
      SheetGroup group, Interval across, List<Interval> pieces, int index, int ordinal) {
    Kit kit = plan.kit();
    boolean laps = index < pieces.size() - 1;
    double lap = laps ? kit.get(FLASHING_LAP) : 0;
    double thick = kit.flashing().thickness();
    double forth = free(group);
    double back = back();
    Interval own = pieces.get(index);
    RidgeFold fold = fold(own, forth, back, index * thick);
    List<org.underlee.geom.Extrusion> bodies = new ArrayList<>(fold.bodies(plan.frame()));
    if (laps) {
      // the next piece lies over this one's end
      Interval end = new Interval(own.to(), own.to() + lap);
      bodies.addAll(fold(end, forth, back, index * thick).bodies(plan.frame()));
    }
    PartNames.Shape shape =
        PartNames.Shape.of(kit.flashing().id(), own.length() + lap, forth + back, bodies)
            .foldedFrom(fold.flatWidth())
            .falling(plan.fall())
            .derived(derivations(group, across, pieces.size(), laps, forth, back));
    return names.inField(
        PartKind.RIDGE_CAP,
        ordinal,
        shape,
        "over the heads of the sheets that fall to both sides of the high line, screwed to their"
            + " crests");
  }

  private RidgeFold fold(Interval across, double forth, double back, double lifted) {
    return new RidgeFold(
        across, plan.seat(0) + lifted, forth, back, plan.fall(), plan.kit().flashing().thickness());
  }

  /** Up to the first batten. */
  private double free(SheetGroup group) {
    return new BattenPlaces(group).stations().get(0) - plan.kit().get(BATTEN_WIDTH) / 2 - PLAY;
  }

  /** Up to the first batten of the other side. */
  private double back() {
    return plan.beyond().stream()
        .flatMap(b -> SheetGroup.of(b).stream())
        .mapToDouble(this::free)
        .min()
        .orElseThrow();
  }

  private List<Derivation> derivations(
      SheetGroup group, Interval across, int count, boolean laps, double forth, double back) {
    Kit kit = plan.kit();
    RunReckoning reckoning = new RunReckoning(plan, group.runs().get(0));
    Reckoning length =
        new Reckoning(kit)
            .from(
                Words.of("from joist to joist, where bays go on beyond the high line"),
                across.length(),
                reckoning.joists());
    if (count > 1) {
      length.over(
          Words.of("equal pieces, none longer with its lap than %s", Quantity.length(longest())),
          count,
          length.origin(FLASHING_LAP));
    }
    if (laps) {
      length.plus(FLASHING_LAP);
    }
    Reckoning width =
        new Reckoning(kit)
            .from(Words.of("from the high line to the first batten"), forth, reckoning.joists())
            .plus("to the first batten of the other side", back, reckoning.joists());
    return List.of(
        length.gives(Dimension.LENGTH),
        width.gives(Dimension.WIDTH),
        new Reckoning(width)
            .times("along the fall", Math.hypot(1, plan.fall()), width.origin(RUN_PER_FALL))
            .gives(Dimension.FLAT_WIDTH),
        reckoning.fall());
  }
}
