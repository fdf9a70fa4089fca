package org.underlee.check;

import static org.underlee.kit.PanValue.PAN_HEM;

import java.util.ArrayList;
import java.util.List;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.kit.Family;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * No water gets behind the ledger: the pans' heads are turned up and under the head rail. Troughs
 * of membrane are turned up to the joist tops; sheets hang below the ledger.
 */
public final class HeadClosed implements Check {
  static final Rule LOW_DAM =
      new Rule(
          "end-dam-low",
          Level.WARNING,
          Rule.COMMON_PRACTICE + ": an end dam of at least 1 in",
          "The upturned head of the pans is low: wind may drive water over it to the ledger.");

  private static final double LEAST = Lengths.INCH;

  @Override
  public List<Rule> rules() {
    return List.of(LOW_DAM);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      double dam = f.kit().family() == Family.PANS ? f.kit().get(PAN_HEM) : LEAST;
      if (dam < LEAST && f.all(PartKind.PAN).findAny().isPresent()) {
        found.add(
            f.found(
                LOW_DAM,
                Words.of("the pans' heads are turned up by %s.", Quantity.length(dam)),
                Measure.lengths(dam, LEAST),
                Fix.of(
                    Words.of(
                        "Use a kit whose pans turn up by %s or more, or seal the head rail to the"
                            + " pan.",
                        Quantity.length(LEAST).atLeast()))));
      }
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Is there flashing above the ledger, at least 2 in up the wall and over the"
                    + " ledger's face?",
                "Water that runs down the wall gets behind the head rail without it.",
                "IRC R507.9.1.5"),
            new SiteQuestion(
                "Is the wall behind the ledger sound, with a drainage plane that laps over the"
                    + " flashing?",
                "Pans hide leaks at the ledger until it rots.",
                "IRC R507.9.1.7")));
  }
}
