package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.units.Words;

/** Tubs and kitchens on the deck get a drain of their own. Told by class and by name. */
public final class AboveTheDeck implements Check {
  static final Rule TUB =
      new Rule(
          "tub-or-kitchen-above",
          Level.WARNING,
          Rule.COMMON_PRACTICE + ": a tub empties more than pans carry; grease is no rain",
          "A tub, a sink or a kitchen stands on the deck over the pans.");

  private static final List<String> WORDS =
      List.of("hot tub", "spa ", "whirlpool", "kitchen", "grill", "barbecue", "sink");

  @Override
  public List<Rule> rules() {
    return List.of(TUB);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    List<BuildingElement> wet = input.elements().stream().filter(AboveTheDeck::isWet).toList();
    for (Assembled f : input.fields()) {
      wet.stream().filter(e -> isAbove(f, f.boxOf(e))).forEach(e -> found.add(finding(f, e)));
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Will a hot tub, a kitchen or planters stand on the deck?",
                "A tub needs its own drain and its own engineering; pans carry rain only.",
                Rule.COMMON_PRACTICE),
            new SiteQuestion(
                "Does a roof's downspout empty onto the deck?",
                "The pans, gutter and outlets must then carry that roof too.",
                Rule.COMMON_PRACTICE),
            new SiteQuestion(
                "Are a permit or an owners' association's consent needed, and must the framing stay"
                    + " open to the inspector?",
                "Pans can be taken out again, but plan for it.",
                "your local code")));
  }

  private static boolean isWet(BuildingElement e) {
    String name = (e.name() + " " + e.typeName() + " ").toLowerCase(Locale.ROOT);
    return e.ifcClass().equals("IfcSanitaryTerminal") || WORDS.stream().anyMatch(name::contains);
  }

  private static boolean isAbove(Assembled f, Box own) {
    double top = f.field().top() - f.frame().origin().z();
    return own.max().z() > top
        && own.max().x() > f.field().across().from()
        && own.min().x() < f.field().across().to()
        && own.max().y() > f.field().along().from()
        && own.min().y() < f.field().along().to();
  }

  private static Finding finding(Assembled f, BuildingElement e) {
    return Finding.of(
            TUB,
            e.place(),
            Words.of("%s \"%s\" #%s stands on the deck.", e.ifcClass(), e.name(), e.instance()),
            "Give it a drain of its own that does not go through the pans.")
        .about(f.subject("above", e, Optional.empty()));
  }
}
