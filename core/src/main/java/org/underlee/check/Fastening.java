package org.underlee.check;

import static org.underlee.kit.PanValue.PAN_DRIP_SETBACK;
import static org.underlee.kit.PanValue.RAIL_FASTENER_MARGIN;
import static org.underlee.kit.PanValue.RAIL_LEG;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.kit.Family;
import org.underlee.layout.Derivation;
import org.underlee.layout.Dimension;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Rails can be screwed far enough from the joist's edge over their whole length. */
public final class Fastening implements Check {
  static final Rule NEAR_EDGE =
      new Rule(
          "fastener-near-joist-edge",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": fasteners at least 3/4 in from a joist's edge",
          "A rail lies so low that its screws would split the joist's lower edge.");

  static final Rule SHORT =
      new Rule(
          "screw-too-short",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": fasteners at least 1 in into the joist",
          "The kit's screws reach less than 1 in into the joist.");

  private static final double DEEP = Lengths.INCH;

  private static final double LEAST = 0.75 * Lengths.INCH;

  /** Results of the layout are exact to this. */
  private static final double SLACK = 1e-4;

  @Override
  public List<Rule> rules() {
    return List.of(NEAR_EDGE, SHORT);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      List<Bay> railed = f.kit().family() == Family.PANS ? f.served() : List.of();
      railed.forEach(b -> judge(f, b).ifPresent(found::add));
      embedment(f).filter(d -> d < DEEP).ifPresent(d -> found.add(shallow(f, d)));
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Where are the ledger's bolts and the joist hangers?",
                "No screw may meet them; set rails' screws beside them.",
                Rule.COMMON_PRACTICE),
            new SiteQuestion(
                "Is the structure sound: ledger bolts, hangers, guard posts, no rot?",
                "No pans under a deck that must be repaired first.",
                Rule.COMMON_PRACTICE + ": inspect before covering")));
  }

  /** As the layout derived it for the rails' screws. */
  private static Optional<Double> embedment(Assembled f) {
    return f.layout().parts().stream()
        .filter(p -> p.kind() == PartKind.FASTENER)
        .flatMap(p -> p.why().of(Dimension.EMBEDMENT).stream())
        .map(Derivation::value)
        .min(Comparator.naturalOrder());
  }

  private static Finding shallow(Assembled f, double depth) {
    return f.found(
        SHORT,
        Words.of(
            "its screws reach %s into the wood; they need %s.",
            Quantity.length(depth), Quantity.length(DEEP)),
        Measure.lengths(depth, DEEP),
        Fix.of(
            Words.of(
                "Use a kit with screws that are longer by %s or more (screwLengthMm).",
                Quantity.length(DEEP - depth).atLeast())));
  }

  private static Optional<Finding> judge(Assembled f, Bay bay) {
    List<Placed> pans = f.pansOf(bay);
    double to = pans.get(pans.size() - 1).box().max().y() + f.kit().get(PAN_DRIP_SETBACK);
    double above = f.kit().get(RAIL_LEG) - f.kit().get(RAIL_FASTENER_MARGIN);
    double least =
        Arrays.stream(bay.turns(bay.stretch().from(), to))
            .map(v -> f.seat(v) + above - bay.joistBottom(v))
            .min()
            .orElse(LEAST);
    return least >= LEAST - SLACK
        ? Optional.empty()
        : Optional.of(
            Finding.measured(
                    NEAR_EDGE,
                    f.place(),
                    Words.of(
                        "the rails' screws come nearer than %s to the joists' lower edge.",
                        Quantity.length(LEAST)),
                    Measure.lengths(least, LEAST),
                    "Use a kit with a taller rail leg, or less fall.")
                .about(f.subject(bay, Optional.of(Quantity.length(least)))));
  }
}
