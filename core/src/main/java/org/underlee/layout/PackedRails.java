package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Place;
import org.underlee.framing.JoistLine;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Says where a rail stands off its joist: a pan has one straight edge, so beside a sister that
 * covers a part of the run the rail goes straight on past the sister's end.
 */
final class PackedRails {
  /** Sheet and screws take up less than this: bow and twist of ordinary joists. */
  private static final double TAKEN_UP = 0.006;

  private PackedRails() {}

  static List<Finding> of(String field, BayRun run) {
    List<Finding> findings = new ArrayList<>();
    add(findings, field, run, run.bay().left(), run.bay().standOffLeft());
    add(findings, field, run, run.bay().right(), run.bay().standOffRight());
    return findings;
  }

  private static void add(
      List<Finding> findings, String field, BayRun run, JoistLine line, double standOff) {
    if (standOff <= TAKEN_UP) {
      return;
    }
    Place place = line.plies().get(0).element().place();
    Quantity off = Quantity.length(standOff);
    findings.add(
        Finding.measured(
                LayoutRules.RAIL_PACKED,
                place,
                Words.of("a rail stands off its joist where the line is thinner."),
                Measure.lengths(standOff, TAKEN_UP),
                "Pack the rail out to the line's thicker part at each fastener, or carry the sister"
                    + " on over the whole run.")
            .about(
                new Subject(
                    field, run.bay().id() + " along " + line.id(), place, Optional.of(off))));
  }
}
