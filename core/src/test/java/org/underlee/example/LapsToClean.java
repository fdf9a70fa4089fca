package org.underlee.example;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.Bay;
import org.underlee.check.Answer;
import org.underlee.check.Assembled;
import org.underlee.check.Check;
import org.underlee.check.CheckInput;
import org.underlee.check.SiteQuestion;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Place;
import org.underlee.finding.Rule;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** The worked example of a rule: leaves gather at laps, so that a bay should have few of them. */
public final class LapsToClean implements Check {
  static final Rule MANY_LAPS =
      new Rule(
          "many-laps",
          Level.NOTE,
          Rule.COMMON_PRACTICE,
          "The pans of a bay lap in several places, where leaves gather.");

  private static final int MOST = 1;

  @Override
  public List<Rule> rules() {
    return List.of(MANY_LAPS);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled field : input.fields()) {
      for (Bay bay : field.served()) {
        int laps = field.pansOf(bay).size() - 1;
        if (laps > MOST) {
          found.add(manyLaps(bay, laps));
        }
      }
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Which trees shed onto the deck?",
                "Leaves gather at laps.",
                Rule.COMMON_PRACTICE)));
  }

  private static Finding manyLaps(Bay bay, int laps) {
    return Finding.measured(
        MANY_LAPS,
        Place.NOWHERE,
        Words.of("the pans of bay %s lap in %s places.", bay.id(), Quantity.count(laps)),
        new Measure(Quantity.count(laps), Quantity.count(MOST)),
        Fix.of("Use a kit with longer pieces, or plan to clean here each autumn."));
  }
}
