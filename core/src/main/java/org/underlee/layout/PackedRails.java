package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.framing.JoistLine;
import org.underlee.units.Lengths;

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
    findings.add(
        Finding.measured(
            LayoutRules.RAIL_PACKED,
            line.plies().get(0).element().place(),
            String.format(
                Locale.ROOT,
                "%s %s: the rail along %s stands %s off the joist where the line is thinner.",
                field,
                run.bay().id(),
                line.id(),
                Lengths.millimetres(standOff)),
            new Measure(standOff * 1000, TAKEN_UP * 1000, "mm"),
            "Pack the rail out to the line's thicker part at each fastener, or carry the sister"
                + " on over the whole run."));
  }
}
