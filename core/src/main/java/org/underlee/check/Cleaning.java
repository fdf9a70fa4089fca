package org.underlee.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Pans can be taken out to clean above them. */
public final class Cleaning implements Check {
  static final Rule LONG_PAN =
      new Rule(
          "pan-long-to-take-out",
          Level.NOTE,
          Rule.COMMON_PRACTICE + ": removable pieces of at most 10 ft",
          "A piece of pan is long to take out for cleaning.");

  private static final double LONGEST = 10 * Lengths.FOOT;

  /** A piece formed of 10 ft stock is no longer. */
  private static final double SLACK = 0.001;

  @Override
  public List<Rule> rules() {
    return List.of(LONG_PAN);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      f.all(PartKind.PAN)
          .map(p -> p.part().length())
          .max(Comparator.naturalOrder())
          .filter(l -> l > LONGEST + SLACK)
          .ifPresent(l -> found.add(finding(f, l)));
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Is there a hose tap, and a way to reach the gutter to clean it twice a year?",
                "Leaves and nests above the pans hold water against the joists.",
                Rule.COMMON_PRACTICE)));
  }

  private static Finding finding(Assembled f, double length) {
    return f.found(
        LONG_PAN,
        Words.of("the longest piece of pan is %s.", Quantity.length(length)),
        Measure.lengths(length, LONGEST),
        Fix.of(
            Words.of(
                "Use a kit whose longest piece of pan is %s or less (panLongestMm).",
                Quantity.length(LONGEST).atMost())));
  }
}
