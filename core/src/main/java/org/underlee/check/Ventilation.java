package org.underlee.check;

import static org.underlee.kit.DrainValue.DRIP_CLEARANCE;
import static org.underlee.kit.DrainValue.HEAD_GAP;
import static org.underlee.kit.PanValue.PAN_HEM;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.drainage.flow.ProofData;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.kit.Family;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/**
 * Each bay that pans close from below dries out: it is a space of its own, with openings of at
 * least 1/150 of its area in plan. Counted as open: the gap at the pan's low end up to the joist
 * tops, or to the joist bottoms where a rim closes the bay, but at least the gap above the gutter's
 * rim; and the gap at the pan's head. Gaps between boards are not counted.
 */
public final class Ventilation implements Check {
  static final Rule CLOSED =
      new Rule(
          "bay-not-ventilated",
          Level.WARNING,
          "IBC 2018 2304.12.2.6: net free area 1/150 of each separate space",
          "A bay above a pan has too little opening to dry out.");

  @Override
  public List<Rule> rules() {
    return List.of(CLOSED);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      List<Bay> closed = f.kit().family() == Family.PANS ? f.served() : List.of();
      closed.forEach(b -> judge(f, b, input.data()).ifPresent(found::add));
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Will a ceiling be hung below the pans, or the low ends be closed?",
                "Each bay then needs vents of its own: 1/150 of its area.",
                "IBC 2018 2304.12.2.6")));
  }

  private static Optional<Finding> judge(Assembled f, Bay bay, ProofData data) {
    double area = bay.clearWidthHigh() * bay.length();
    double share = open(f, bay) / area;
    double least = data.ventArea(area) / area;
    return share >= least
        ? Optional.empty()
        : Optional.of(
            Finding.measured(
                    CLOSED,
                    f.place(),
                    Words.of(
                        "less than %s of the bay's area stays open above the pan for it to dry out.",
                        Quantity.of(Kind.FACTOR, least)),
                    new Measure(Quantity.of(Kind.FACTOR, share), Quantity.of(Kind.FACTOR, least)),
                    "Lower the seat, or put vents with insect mesh into the rim.")
                .about(f.subject(bay, Optional.of(Quantity.of(Kind.FACTOR, share)))));
  }

  private static double open(Assembled f, Bay bay) {
    List<Placed> pans = f.pansOf(bay);
    double end = pans.get(pans.size() - 1).box().max().y();
    boolean atRim = bay.low().isPresent() && f.field().dropBeams().isEmpty();
    double top = atRim ? bay.joistBottom(end) : bay.joistTop(end);
    double low = Math.max(f.kit().get(DRIP_CLEARANCE), top - f.seat(end) - f.kit().get(PAN_HEM));
    return bay.clearWidthAt(end) * low + bay.clearWidthHigh() * f.kit().get(HEAD_GAP);
  }
}
