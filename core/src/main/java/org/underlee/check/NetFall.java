package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.drainage.flow.PanSurface;
import org.underlee.drainage.flow.ProofData;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * The fall that is left when the joists bend. Pans follow the joists; a simply supported joist
 * under even load turns at its ends by 3.2 times its deflection over its span, which takes that
 * much from the fall at the low end.
 *
 * <p>The deflection is assumed, not computed from the wood: at full live load what span tables
 * allow (L/360 at 40 psf); in use the dead load of 10 psf, doubled by creep of wet wood. Crown and
 * level are in the measured joists, on which the seat was laid out.
 */
public final class NetFall implements Check {
  static final Rule TOO_LOW =
      new Rule(
          "net-fall-too-low",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": at least 1/16 in per ft is left in use",
          "Less than 1/16 in per ft of fall is left once the joists bend: water stands.");

  static final Rule LOW =
      new Rule(
          "net-fall-low",
          Level.WARNING,
          Rule.COMMON_PRACTICE
              + ": 1/8 in per ft in use, 1/16 in per ft under a crowd; joists bend L/360 (span"
              + " tables)",
          "Little fall is left once the joists bend under their load.");

  /** 10 psf dead over 40 psf live. */
  private static final double DEAD_OVER_LIVE = 0.25;

  /** Falls that are easy to set out: 3/16, 1/4, 3/8 and 1/2 in per ft. */
  private static final int[] STEEPER = {64, 48, 32, 24};

  @Override
  public List<Rule> rules() {
    return List.of(TOO_LOW, LOW);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    input.fields().forEach(f -> judge(f, inUse(input.data())).ifPresent(found::add));
    return Answer.found(found);
  }

  /** What a fall loses at the low end when the joist sags by a share of its span. */
  private static double lost(double sag) {
    return -new PanSurface(1, 0, sag, 0).atOutlet();
  }

  /** What the low end loses at full live load, and what it loses in use. */
  private static double atLive() {
    return lost(Limits.LIVE_DEFLECTION);
  }

  private static double inUse(ProofData data) {
    return lost(
        Limits.LIVE_DEFLECTION * DEAD_OVER_LIVE * data.get(ProofData.Key.JOIST_CREEP_FACTOR));
  }

  private static Optional<Finding> judge(Assembled f, double inUse) {
    double used = f.layout().fall() - inUse;
    double crowd = f.layout().fall() - atLive();
    boolean tooLow = used < Limits.FALL_LEAST;
    boolean low = used < Limits.FALL_ADVISED || crowd < Limits.FALL_LEAST;
    return tooLow || low ? Optional.of(finding(f, inUse, crowd, tooLow)) : Optional.empty();
  }

  private static Finding finding(Assembled f, double inUse, double crowd, boolean tooLow) {
    double used = f.layout().fall() - inUse;
    return f.found(
        tooLow ? TOO_LOW : LOW,
        Words.of(
            "the %ss fall %s; with the joists bent by the deck's own weight %s is left at the low"
                + " end, and %s when the deck is full of people. Assumed: joists that bend by 1/360"
                + " of their span at full live load.",
            f.piece(), Quantity.fall(f.layout().fall()), Quantity.fall(used), Quantity.fall(crowd)),
        new Measure(
            Quantity.fall(used), Quantity.fall(tooLow ? Limits.FALL_LEAST : Limits.FALL_ADVISED)),
        fix(f.piece(), inUse));
  }

  private static Fix fix(String piece, double inUse) {
    double least = Math.max(Limits.FALL_ADVISED + inUse, Limits.FALL_LEAST + atLive());
    Words advice =
        Words.of("Give the %ss a fall of %s or steeper.", piece, Quantity.fall(least).atLeast());
    for (int run : STEEPER) {
      double fall = 1.0 / run;
      if (fall >= least) {
        return Fix.with(
            advice,
            new Fix.Action(
                List.of(new Fix.Option("--fall", "1:" + run)),
                Words.of("%s is left at the low end", Quantity.fall(fall - inUse))));
      }
    }
    return Fix.of(advice);
  }
}
