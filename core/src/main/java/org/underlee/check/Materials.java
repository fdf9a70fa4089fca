package org.underlee.check;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.underlee.drainage.flow.ProofData.Verdict;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.units.Words;

/** Metals that touch do not eat each other, nor does treated wood eat them. */
public final class Materials implements Check {
  static final Rule TREATED =
      new Rule(
          "metal-on-treated-wood",
          Level.WARNING,
          "USDA-NRCS construction specification 23: no copper-treated wood against aluminium or"
              + " galvanised steel without a waterproof layer between",
          "The framing is of treated wood, whose copper eats bare aluminium and zinc.");

  static final Rule METALS =
      new Rule(
          "copper-with-other-metal",
          Level.WARNING,
          Rule.COMMON_PRACTICE + ": no copper with aluminium or zinc, or uphill of them",
          "The kit has copper together with aluminium or galvanised steel.");

  private static final String LUMBER = "treated lumber";
  private static final List<String> METALS_OF_TABLE =
      List.of("aluminium", "galvanised steel", "copper", "stainless steel");

  private static final List<String> TREATED_WORDS =
      List.of("treated", "acq", " pt ", "preservative");

  @Override
  public List<Rule> rules() {
    return List.of(TREATED, METALS);
  }

  @Override
  public Answer of(CheckInput input) {
    List<String> metals = metals(input);
    boolean eaten = metals.stream().anyMatch(m -> verdict(input, LUMBER, m) == Verdict.SEPARATE);
    Answer answer = Answer.asked();
    if (areForbidden(input, metals) && !input.fields().isEmpty()) {
      answer = answer.and(Answer.found(List.of(metals(input.fields().get(0)))));
    }
    return eaten ? answer.and(treated(input)) : answer;
  }

  /** The kit's metals as the table names them. Sheet is cut on site, so a coat does not count. */
  private static List<String> metals(CheckInput input) {
    return input.layout().kit().materials().stream()
        .map(m -> m.name().toLowerCase(Locale.ROOT))
        .flatMap(name -> METALS_OF_TABLE.stream().filter(name::contains))
        .distinct()
        .toList();
  }

  private static boolean areForbidden(CheckInput input, List<String> metals) {
    return metals.stream()
        .anyMatch(a -> metals.stream().anyMatch(b -> verdict(input, a, b) == Verdict.FORBIDDEN));
  }

  private static Verdict verdict(CheckInput input, String one, String other) {
    return input.data().contact(one, other).map(c -> c.verdict()).orElse(Verdict.ALLOWED);
  }

  private static Answer treated(CheckInput input) {
    List<Finding> found =
        input.fields().stream()
            .flatMap(f -> firstTreated(f).map(e -> finding(f, e)).stream())
            .toList();
    return found.isEmpty()
        ? Answer.asked(
            new SiteQuestion(
                "Is the framing treated with copper (ACQ, CA, MCA)?",
                "Bare aluminium and galvanised steel need a waterproof layer between; screws must be"
                    + " stainless or hot-dip galvanised.",
                "USDA-NRCS construction specification 23; IRC R317.3.1"))
        : Answer.found(found);
  }

  private static Optional<BuildingElement> firstTreated(Assembled f) {
    return f.field().lines().stream()
        .flatMap(l -> l.plies().stream())
        .map(m -> m.element())
        .filter(Materials::isTreated)
        .findFirst();
  }

  private static boolean isTreated(BuildingElement e) {
    String name = (" " + e.name() + " " + e.typeName() + " ").toLowerCase(Locale.ROOT);
    return TREATED_WORDS.stream().anyMatch(name::contains);
  }

  private static Finding finding(Assembled f, BuildingElement joist) {
    return Finding.of(
            TREATED,
            joist.place(),
            Words.of("the joists are of treated wood (\"%s\").", joist.name()),
            Fix.of("Put a waterproof tape or coat between rails and joists."))
        .about(f.subject());
  }

  private static Finding metals(Assembled f) {
    return Finding.of(
        METALS,
        f.place(),
        Words.of("kit %s has copper together with aluminium or galvanised steel.", f.kit().id()),
        Fix.of("Use a kit of one metal."));
  }
}
