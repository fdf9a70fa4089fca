package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.bay.Bay;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.JoistLine;
import org.underlee.kit.Family;
import org.underlee.layout.PartKind;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** All rain on the deck is caught: no bay, no doubled joist and no stretch is left to drip. */
public final class Coverage implements Check {
  static final Rule SEAM_OPEN =
      new Rule(
          "ply-seam-open",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": the joint of a doubled joist is closed",
          "Water runs down between the plies of a joist line that has no strip below it.");

  static final Rule UNCOVERED =
      new Rule(
          "deck-partly-uncovered",
          Level.NOTE,
          Rule.COMMON_PRACTICE,
          "A part of the deck has no pan below it and drips.");

  /** The strip of a gutter and a rim: what no assembly can cover. */
  private static final double TOLERATED = 0.05;

  /** What keeps water out of the seams of a line, from below or from above. */
  private static final Set<PartKind> CLOSES = Set.of(PartKind.PLY_STRIP, PartKind.CAP_STRIP);

  @Override
  public List<Rule> rules() {
    return List.of(SEAM_OPEN, UNCOVERED);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      f.field().lines().stream().filter(l -> isOpen(f, l)).forEach(l -> found.add(seam(f, l)));
      double share = uncovered(f);
      if (share > TOLERATED) {
        found.add(area(f, share));
      }
    }
    return Answer.found(found);
  }

  private static boolean isOpen(Assembled f, JoistLine line) {
    return line.pliesAbreast() > 1
        && f.served().stream()
            .anyMatch(b -> b.left().id().equals(line.id()) || b.right().id().equals(line.id()))
        && f.kit().family() != Family.SHEET
        && f.parts().stream()
            .filter(p -> CLOSES.contains(p.part().kind()))
            .noneMatch(p -> p.part().id().contains("/" + line.id() + "/"));
  }

  private static Finding seam(Assembled f, JoistLine line) {
    return Finding.of(
            SEAM_OPEN,
            f.place(),
            Words.of("plies stand side by side with no strip below their seam."),
            "Tape the seam from above before the boards are laid, or close it from below.")
        .about(f.subject(line.id(), line.plies().get(0).element(), Optional.empty()));
  }

  /** Share of the field in plan, out to the middle of its outer joists, that is over no pan. */
  private static double uncovered(Assembled f) {
    double whole = 0;
    double covered = 0;
    for (Bay bay : f.bays().bays()) {
      double v = bay.stretch().middle();
      double width = bay.right().centre(v) - bay.left().centre(v);
      whole += width * bay.length();
      List<Placed> pans = f.pansOf(bay);
      if (!pans.isEmpty()) {
        double to = pans.get(pans.size() - 1).box().max().y();
        covered += width * Math.min(bay.length(), to - bay.stretch().from());
      }
    }
    return whole > 0 ? 1 - covered / whole : 0;
  }

  private static Finding area(Assembled f, double share) {
    return f.found(
        UNCOVERED,
        Words.of(
            "%s of its bays' area lies over no %s.", Quantity.of(Kind.SHARE, share), f.piece()),
        new Measure(Quantity.of(Kind.SHARE, share), Quantity.of(Kind.SHARE, TOLERATED)),
        Fix.of("See the findings for each bay; keep what must stay dry elsewhere."));
  }
}
