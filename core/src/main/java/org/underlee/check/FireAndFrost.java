package org.underlee.check;

import java.util.List;
import java.util.Locale;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.kit.Kit;
import org.underlee.kit.Material;
import org.underlee.kit.StockItem;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.units.Words;

/** Fire, snow and ice: what burns, and what only the place can tell. */
public final class FireAndFrost implements Check {
  static final Rule PLASTIC =
      new Rule(
          "plastic-below-deck",
          Level.NOTE,
          "IWUIC 2015 506.4: no vinyl gutters where brush fires threaten; vinyl softens from 140"
              + " degrees F",
          "Pans or gutters are of plastic, which burns, and softens near a grill.");

  private static final List<String> PLASTICS =
      List.of("vinyl", "pvc", "polypropylene", "polycarbonate", "polyethylene");

  @Override
  public List<Rule> rules() {
    return List.of(PLASTIC);
  }

  @Override
  public Answer of(CheckInput input) {
    Kit kit = input.layout().kit();
    List<Finding> found =
        input.fields().stream().filter(f -> isPlastic(f, kit)).map(f -> finding(f, kit)).toList();
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "Is the place in a zone where brush fires threaten?",
                "There gutters must not burn and leaves must be kept out; pans under gapped boards"
                    + " catch embers.",
                "IWUIC 2015 504.7.1, 506.4"),
            new SiteQuestion(
                "How much snow lies there, does it slide from the roof onto the deck, and does the"
                    + " gutter freeze?",
                "Sliding snow tears gutters off; in snow country hangers stand 12 to 18 in apart.",
                Rule.COMMON_PRACTICE)));
  }

  private static boolean isPlastic(Assembled f, Kit kit) {
    return f.parts().stream()
        .map(Placed::part)
        .filter(p -> p.kind() == PartKind.PAN || p.kind() == PartKind.GUTTER)
        .map(Part::item)
        .distinct()
        .map(kit::item)
        .map((StockItem i) -> kit.materialOf(i))
        .anyMatch(FireAndFrost::isPlastic);
  }

  private static boolean isPlastic(Material material) {
    String name = material.name().toLowerCase(Locale.ROOT);
    return PLASTICS.stream().anyMatch(name::contains);
  }

  private static Finding finding(Assembled f, Kit kit) {
    return Finding.of(
            PLASTIC,
            f.place(),
            Words.of("pans or gutters of kit %s are of plastic.", kit.id()),
            Fix.of("Keep grills and heaters away; use a metal kit where brush fires threaten."))
        .about(f.subject());
  }
}
