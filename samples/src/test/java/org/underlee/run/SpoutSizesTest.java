package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Rating;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.Finding;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.OwnTables;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.SampleDeck;
import org.underlee.samples.SampleDecks;
import org.underlee.units.Flows;

/** A model says by what size its downspouts are called, and tables are read at that. */
class SpoutSizesTest {
  private static final Storm RAIN = RainData.builtIn().service(RainData.ANYWHERE);

  /** The least of all in either row, so that it governs. */
  private static final double AT_2_IN = 19;

  private static final double AT_3_IN = 30;

  private static final Scope RATED =
      new Scope(
          Optional.empty(),
          Optional.empty(),
          Wishes.NONE.ratedBy(
              new OwnTables(
                  "mine.json",
                  """
                  {"schema": "underlee/own-capacities/1", "shownOnly": [], "tables": [
                    {"id": "mine", "use": "round downspout", "code": "Our county",
                     "edition": "2024", "table": "Table 7", "unit": "gpm", "source": "a code",
                     "rows": [
                       {"sizeInches": 2, "fallInchesPerFoot": 0, "capacity": %s},
                       {"sizeInches": 3, "fallInchesPerFoot": 0, "capacity": %s}]}]}
                  """
                      .formatted(AT_2_IN, AT_3_IN))));

  static List<SampleDeck> samples() {
    return SampleDecks.all();
  }

  private static Design design(SampleDeck deck, Kit kit) {
    return DeckRun.design(
        DeckRun.survey(IfcEmitter.emit(deck, deck.ownMix()), "deck.ifc"), RATED, kit, RAIN);
  }

  private static String text(Design design) {
    return new String(design.written().bytes(), StandardCharsets.ISO_8859_1);
  }

  private static String told(List<Finding> findings) {
    return findings.stream()
        .filter(f -> f.rule().id().equals("rated-by-own-tables"))
        .map(Finding::message)
        .collect(Collectors.joining("\n"));
  }

  private static String checked(String text) {
    Checked checked =
        DeckRun.check(
            text.getBytes(StandardCharsets.ISO_8859_1),
            "drained.ifc",
            SurveyRequest.PLAIN,
            Optional.empty());
    assertThat(checked.findings()).noneMatch(f -> f.rule().id().equals("design-checks-left-out"));
    return told(checked.findings());
  }

  /** The written model, in which each downspout is called so many times its size. */
  private static String called(Design design, double times) {
    String other =
        Pattern.compile("(?<='NominalDiameter',\\$,IFCPOSITIVELENGTHMEASURE\\()[^)]+")
            .matcher(text(design))
            .replaceAll(m -> "" + times * Double.parseDouble(m.group()));
    assertThat(other).isNotEqualTo(text(design));
    return other;
  }

  /** What the hardest used outlet takes of a row of the table. */
  private static String takes(Design design, double gpm) {
    double most =
        OutletsRated.of(design, RATED.wishes(), RAIN).stream()
            .mapToDouble(r -> r.of(Rating.Part.DOWNSPOUT).get(0).demand())
            .max()
            .orElseThrow();
    return "Our county 2024, Table 7 (your own table), of which it takes %d percent"
        .formatted((long) Math.ceil(100 * most / Flows.GPM / gpm));
  }

  @ParameterizedTest
  @MethodSource("samples")
  void aModelAsWrittenIsRatedAsItsDesignIs(SampleDeck deck) {
    Design design = design(deck, KitReader.named("rigid-vinyl"));
    assertThat(text(design)).contains("'NominalDiameter'");
    assertThat(told(design.findings())).contains(takes(design, AT_3_IN));
    assertThat(checked(text(design))).isEqualTo(told(design.findings()));
  }

  /** In the model's own unit, whichever that is, a hundredth less than 3 in. */
  @ParameterizedTest
  @MethodSource("samples")
  void oneThatIsCalledSmallerInTheModelIsReadAtTheSmallerRow(SampleDeck deck) {
    Design design = design(deck, KitReader.builtIn());
    assertThat(checked(called(design, 0.99))).contains(takes(design, AT_2_IN));
  }

  /** Whatever is stated: a pipe of 3 in carries no more than one that is called so. */
  @ParameterizedTest
  @MethodSource("samples")
  void oneThatIsCalledLargerThanItsOutsideIsReadAtItsOutside(SampleDeck deck) {
    Design design = design(deck, KitReader.builtIn());
    assertThat(checked(called(design, 2.7))).contains(takes(design, AT_3_IN));
  }

  /** 72.2 mm are clear in 2 mm vinyl, with two walls of 0.032 in less than 3 in. */
  @ParameterizedTest
  @MethodSource("samples")
  void whereTheModelDoesNotSayTheClearSizeCounts(SampleDeck deck) {
    Design design = design(deck, KitReader.named("rigid-vinyl"));
    assertThat(checked(text(design).replace("'NominalDiameter'", "'Bore'")))
        .contains(takes(design, AT_2_IN));
  }
}
