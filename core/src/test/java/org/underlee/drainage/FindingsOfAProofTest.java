package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.Finding;
import org.underlee.finding.Place;
import org.underlee.geom.Vec3;

/** What is said of a proof, of proofs made up for it: 100 m² of deck unless more is told. */
class FindingsOfAProofTest {
  private static final String FIELD = "deck-1/field-1";

  private static Leak leak(LeakCause cause, double area, String... parts) {
    return new Leak(FIELD, "B1", cause, Vec3.ZERO, area, List.of(parts), List.of());
  }

  private static DrainProof proof(Leak... leaks) {
    return new DrainProof(100, 0, 90, List.of(leaks), List.of(), List.of(), List.of(), List.of());
  }

  private static Place placeOf(String part) {
    return Place.element(part.length(), part);
  }

  private static List<Finding> findings(DrainProof proof) {
    return DrainageFindings.of(proof, FindingsOfAProofTest::placeOf);
  }

  private static StandingWater water(Optional<String> blocked, double volume) {
    return new StandingWater(
        "gutter", blocked, 0.04, 0.2, volume, Vec3.ZERO, Vec3.ZERO, "over the rim");
  }

  /** Of a deck of 100 m² that is dry. */
  private static DrainProof standing(
      List<StandingWater> ponds, List<StandingWater> blocked, List<String> flat) {
    return new DrainProof(100, 0, 100, List.of(), List.of(), ponds, blocked, flat);
  }

  @ParameterizedTest
  @CsvSource({
    "OPEN_BAY, 0.1, open-deck-drips",
    "BEYOND_GUTTER, 9, open-deck-drips",
    "BEHIND_GUTTER, 9, joint-leaks",
    "NO_DOWNSPOUT, 0.1, outlet-leads-nowhere",
    "SHORT_DOWNSPOUT, 0.1, outlet-leads-nowhere",
    // half a percent of 100 m²
    "EDGE, 0.5, joint-leaks",
    "EDGE, 0.49, joint-drips",
    "SPILL, 9, joint-leaks"
  })
  void aLeakIsToldByItsCauseAndItsShareOfTheRain(LeakCause cause, double area, String rule) {
    List<Finding> told = findings(proof(leak(cause, area, "pan-1")));
    assertThat(told).hasSize(1);
    assertThat(told.get(0).rule().id()).isEqualTo(rule);
    assertThat(told.get(0).measure().orElseThrow().measured().si())
        .isCloseTo(area / 100, within(1e-12));
    assertThat(told.get(0).measure().orElseThrow().limit().si()).isZero();
  }

  /** Leaks of less than half a percent each are more than that together. */
  @Test
  void leaksOfOneCauseAreToldTogetherAtTheWorstOfThem() {
    List<Finding> told =
        findings(proof(leak(LeakCause.EDGE, 0.4, "pan-12"), leak(LeakCause.EDGE, 0.2, "pan-3")));
    assertThat(told).hasSize(1);
    assertThat(told.get(0).rule().id()).isEqualTo("joint-leaks");
    assertThat(told.get(0).place()).isEqualTo(placeOf("pan-12"));
    // 0.6 m² in 100 mm/h are 60 litres an hour.
    assertThat(told.get(0).message())
        .startsWith(FIELD + ": " + LeakCause.EDGE.why() + " (pan-12); ")
        .endsWith("0.60 m² of deck, 60.0 litres an hour in rain of 100 mm/h, in 2 places.");
    assertThat(told.get(0).fix().orElseThrow().words().toString()).contains(LeakCause.EDGE.fix());
  }

  @Test
  void aLeakOfNoPartHasNoPlaceAndNoPartInItsSentence() {
    Finding told = findings(proof(leak(LeakCause.GAP, 1))).get(0);
    assertThat(told.place()).isEqualTo(Place.NOWHERE);
    assertThat(told.message()).startsWith(FIELD + ": " + LeakCause.GAP.why() + "; ");
    assertThat(told.message()).doesNotContain("places");
  }

  @Test
  void dripsOfAFieldAreOneLineWithTheMostWaterFirst() {
    List<Finding> told =
        findings(
            proof(
                leak(LeakCause.GAP, 0.1),
                leak(LeakCause.EDGE, 0.1, "pan-1"),
                leak(LeakCause.EDGE, 0.15, "pan-2"),
                leak(LeakCause.SPILL, 0.1, "pan-2")));
    assertThat(told).hasSize(1);
    assertThat(told.get(0).rule().id()).isEqualTo("joint-drips");
    assertThat(told.get(0).place()).isEqualTo(Place.NOWHERE);
    assertThat(told.get(0).message())
        .startsWith(FIELD + ": drips from 0.45 m² of deck")
        .contains(
            LeakCause.EDGE.why()
                + ", in 2 places; "
                + LeakCause.GAP.why()
                + ", in 1 place; "
                + LeakCause.SPILL.why()
                + ", in 1 place.");
    assertThat(told.get(0).measure().orElseThrow().measured().si())
        .isCloseTo(0.0045, within(1e-12));
    assertThat(told.get(0).fix().orElseThrow().words().toString()).contains(LeakCause.EDGE.fix());
  }

  @Test
  void whatAnotherFindingTellsIsNotToldAgain() {
    DrainProof proof = proof(leak(LeakCause.OPEN_BAY, 5), leak(LeakCause.EDGE, 5, "pan-1"));
    assertThat(
            DrainageFindings.of(
                proof, FindingsOfAProofTest::placeOf, l -> l.cause() == LeakCause.OPEN_BAY))
        .hasSize(1)
        .allMatch(f -> f.rule().id().equals("joint-leaks"));
  }

  @Test
  void rainBeyondTheGutterIsThatOfOneField() {
    Leak other =
        new Leak(
            "deck-1/field-2", "B1", LeakCause.BEYOND_GUTTER, Vec3.ZERO, 3, List.of(), List.of());
    DrainProof proof =
        proof(leak(LeakCause.BEYOND_GUTTER, 2), leak(LeakCause.BEYOND_GUTTER, 1), other);
    assertThat(DrainageFindings.beyondGutter(proof, FIELD).orElseThrow().toString())
        .isEqualTo("3.00 m² of deck, 300.0 litres an hour in rain of 100 mm/h");
    assertThat(DrainageFindings.beyondGutter(proof, "deck-1/field-3")).isEmpty();
    assertThat(DrainageFindings.beyondGutter(proof(leak(LeakCause.EDGE, 2)), FIELD)).isEmpty();
  }

  @Test
  void standingWaterIsToldFromATenthOfALitre() {
    List<Finding> told =
        findings(
            standing(
                List.of(water(Optional.empty(), 0.00011), water(Optional.empty(), 0.0001)),
                List.of(),
                List.of()));
    assertThat(told).hasSize(1);
    assertThat(told.get(0).rule().id()).isEqualTo("water-stands");
    assertThat(told.get(0).place()).isEqualTo(placeOf("gutter"));
    assertThat(told.get(0).measure().orElseThrow().measured().si()).isEqualTo(0.04);
    assertThat(told.get(0).message()).contains("gutter: water stands 40 mm deep");
  }

  @Test
  void aPartWithoutFallAndABlockedOutletAreTold() {
    List<Finding> told =
        findings(
            standing(List.of(), List.of(water(Optional.of("outlet-1"), 0.009)), List.of("pan-1")));
    assertThat(told.stream().map(f -> f.rule().id()))
        .containsExactly("no-fall", "blocked-outlet-spills");
    assertThat(told.get(0).place()).isEqualTo(placeOf("pan-1"));
    assertThat(told.get(0).message()).isEqualTo("pan-1 has no fall to the gutter.");
    assertThat(told.get(1).place()).isEqualTo(placeOf("outlet-1"));
    assertThat(told.get(1).message())
        .startsWith("outlet-1 blocked: water stands 40 mm deep and weighs 9")
        .endsWith("Where it goes then: over the rim.");
  }

  @Test
  void eachCauseHasItsOwnReasonAdviceAndWord() {
    List<LeakCause> causes = List.of(LeakCause.values());
    assertThat(causes.stream().map(LeakCause::why))
        .doesNotHaveDuplicates()
        .noneMatch(String::isBlank);
    assertThat(causes.stream().map(LeakCause::fix))
        .doesNotHaveDuplicates()
        .noneMatch(String::isBlank);
    assertThat(LeakCause.SHORT_LAP.word()).isEqualTo("short-lap");
  }

  @Test
  void allRulesAreListedOnce() {
    assertThat(DrainageRules.all().stream().map(r -> r.id())).hasSize(7).doesNotHaveDuplicates();
  }

  /** 100 m² of deck and 20 m² of roof: 90 m² drained of 120 m². */
  @Test
  void theDryShareIsOfAllTheRainAndNoneWhereThereIsNoDeck() {
    assertThat(dry(100, 20, 90)).isEqualTo(0.75);
    assertThat(dry(100, 0, 100.0000001)).isEqualTo(1);
    assertThat(dry(0, 0, 0)).isZero();
  }

  private static double dry(double area, double added, double drained) {
    return new DrainProof(
            area, added, drained, List.of(), List.of(), List.of(), List.of(), List.of())
        .dryFraction();
  }
}
