package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.geom.Box;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Laps go with the flow, judged on the drawn pieces: each piece reaches over the next one down the
 * fall, and lies above it there.
 */
public final class LapsShed implements Check {
  static final Rule SHORT =
      new Rule(
          "lap-too-short",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": laps of at least 2 in along the flow",
          "Two pieces of a pan lap by too little, so that water runs through.");

  static final Rule AGAINST =
      new Rule(
          "lap-against-flow",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": the uphill piece lies over the downhill piece",
          "The uphill piece does not lie over the piece below it, so that water runs in between.");

  private static final double LEAST = 2 * Lengths.INCH;

  /** Drawn lengths are along the slope, laps are measured level. */
  private static final double SLACK = 0.0005;

  @Override
  public List<Rule> rules() {
    return List.of(SHORT, AGAINST);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      for (Bay bay : f.bays().bays()) {
        List<Placed> pieces = f.pansOf(bay);
        for (int i = 1; i < pieces.size(); i++) {
          boolean sideBySide =
              pieces.get(i).box().min().y() - pieces.get(i - 1).box().min().y() < SLACK;
          if (sideBySide) {
            continue;
          }
          judge(f, bay, pieces.get(i - 1), pieces.get(i)).ifPresent(found::add);
        }
      }
    }
    return Answer.found(found);
  }

  private static Optional<Finding> judge(Assembled f, Bay bay, Placed up, Placed down) {
    double lap = up.box().max().y() - down.box().min().y();
    if (lap < LEAST - SLACK) {
      return Optional.of(
          Finding.measured(
                  SHORT,
                  f.place(),
                  Words.of(
                      "two pieces of the %s lap by less than %s.",
                      f.piece(), Quantity.length(LEAST)),
                  Measure.lengths(lap, LEAST),
                  Fix.of(
                      Words.of(
                          "Use a kit whose pieces lap by %s or more.",
                          Quantity.length(LEAST).atLeast())))
              .about(f.subject(bay, Optional.of(Quantity.length(lap)))));
    }
    double over = floor(f, up) - floor(f, down);
    return over > 0
        ? Optional.empty()
        : Optional.of(
            Finding.measured(
                    AGAINST,
                    f.place(),
                    Words.of("the uphill piece does not lie over the piece below."),
                    Measure.lengths(over, 0),
                    "Lay the uphill piece over the one below it.")
                .about(f.subject(bay, Optional.empty())));
  }

  /** Height of a piece's floor above the seat, at its low end. */
  private static double floor(Assembled f, Placed p) {
    Box floor = p.floor();
    return floor.min().z() - f.seat(floor.max().y());
  }
}
