package org.underlee.framing;

import java.util.ArrayList;
import java.util.List;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.geom.Interval;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Says where two joist lines are a pair with a narrow gap, as under a divider board. */
final class SpacedPairs {
  private SpacedPairs() {}

  static List<Finding> in(Field field) {
    List<Finding> findings = new ArrayList<>();
    for (int i = 0; i + 1 < field.lines().size(); i++) {
      JoistLine left = field.lines().get(i);
      JoistLine right = field.lines().get(i + 1);
      Interval shared = left.stretch().meet(right.stretch());
      double gap = right.leftAt(shared.middle()) - left.rightAt(shared.middle());
      if (!shared.isEmpty() && gap > 0 && gap <= Blocking.PAIR) {
        findings.add(finding(field, left, right, gap));
      }
    }
    return findings;
  }

  private static Finding finding(Field field, JoistLine left, JoistLine right, double gap) {
    return Finding.measured(
        FramingRules.SPACED_PAIR,
        right.plies().get(0).element().place(),
        Words.of(
            "%s: %s and %s are a pair of joists %s apart, as under a divider board; the gap is a bay"
                + " of its own.",
            field.id(), left.id(), right.id(), Quantity.length(gap)),
        Measure.lengths(gap, Blocking.PAIR),
        "Close the gap with tape over the joist tops where it is too narrow for a pan.");
  }
}
