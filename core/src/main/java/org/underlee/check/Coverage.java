package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.Finding;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.JoistLine;
import org.underlee.kit.Family;
import org.underlee.layout.PartKind;
import org.underlee.units.Words;

/** No doubled joist is left to drip; open bays and stretches are told by following the water. */
public final class Coverage implements Check {
  static final Rule SEAM_OPEN =
      new Rule(
          "ply-seam-open",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": the joint of a doubled joist is closed",
          "Water runs down between the plies of a joist line that has no strip below it.");

  /** What keeps water out of the seams of a line, from below or from above. */
  private static final Set<PartKind> CLOSES = Set.of(PartKind.PLY_STRIP, PartKind.CAP_STRIP);

  @Override
  public List<Rule> rules() {
    return List.of(SEAM_OPEN);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      f.field().lines().stream().filter(l -> isOpen(f, l)).forEach(l -> found.add(seam(f, l)));
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
}
