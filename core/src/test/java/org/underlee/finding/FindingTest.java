package org.underlee.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

class FindingTest {
  private static final Rule RULE = new Rule("bay-too-wide", Level.WARNING, Rule.OWN, "too wide");

  @Test
  void aPlaceSaysAllThatIsKnownInOneOrder() {
    assertThat(Place.NOWHERE).hasToString("");
    assertThat(Place.text(12, 3)).hasToString("line 12, column 3");
    assertThat(Place.text(12, 3).inFile("deck.ifc").atInstance(45))
        .hasToString("deck.ifc, line 12, column 3, #45");
    assertThat(Place.element(7, "0abc")).hasToString("#7, 0abc");
  }

  @Test
  void levelsRiseFromNoteToError() {
    assertThat(List.of(Level.ERROR, Level.NOTE, Level.WARNING).stream().sorted())
        .containsExactly(Level.NOTE, Level.WARNING, Level.ERROR);
    assertThat(Level.WARNING.word()).isEqualTo("warning");
  }

  @Test
  void aFindingHasTheLevelOfItsRuleAndKeepsItsNumbers() {
    Finding plain = Finding.of(RULE, Place.NOWHERE, "wide", "narrow it");
    assertThat(plain.level()).isEqualTo(Level.WARNING);
    assertThat(plain.measure()).isEmpty();
    assertThat(plain.fix()).contains(Fix.of("narrow it"));
    Finding.Measure measure = Finding.Measure.lengths(0.6, 0.56);
    assertThat(Finding.measured(RULE, Place.NOWHERE, "wide", measure, "narrow it").measure())
        .isEqualTo(Optional.of(measure));
  }

  @Test
  void aFindingIsWrittenInTheReadersUnits() {
    Finding wide =
        Finding.of(
            RULE, Place.NOWHERE, Words.of("%s is wide", Quantity.length(0.6096)), "narrow it");
    assertThat(wide.message()).isEqualTo("610 mm is wide");
    assertThat(wide.message(UnitSystem.IMPERIAL)).isEqualTo("2' 0\" is wide");
  }

  @Test
  void whereRoundedNumbersWouldLookAlikeTheExactOnesAreShown() {
    assertThat(tooWide(0.5603).message(UnitSystem.IMPERIAL)).isEqualTo("22.06 in over 22.05 in");
    assertThat(tooWide(0.5603).message()).isEqualTo("560.3 mm over 560.0 mm");
    assertThat(tooWide(0.6).message()).isEqualTo("600 mm over 560 mm");
    assertThat(tooWide(0.56).message()).isEqualTo("560 mm over 560 mm");
  }

  private static Finding tooWide(double width) {
    Words words = Words.of("%s over %s", Quantity.length(width), Quantity.length(0.56));
    return Finding.measured(
        RULE, Place.NOWHERE, words, Finding.Measure.lengths(width, 0.56), "narrow it");
  }

  @Test
  void findingsWithOneCauseAreOneThatNamesEachSubjectOnce() {
    List<Finding> grouped =
        Findings.grouped(List.of(of("B1", 0.60), apart(), of("B2", 0.65), of("B4", 0.61)));
    assertThat(grouped).hasSize(2);
    assertThat(grouped.get(0).message())
        .isEqualTo("deck-1/field-1 B1 (600 mm), B2 (650 mm), B4 (610 mm): too wide");
    assertThat(grouped.get(0).measure()).contains(Finding.Measure.lengths(0.65, 0.56));
    assertThat(grouped.get(1)).isEqualTo(apart());
  }

  @Test
  void findingsWithAnotherLimitOrWithoutSubjectsStayApart() {
    Finding other =
        Finding.measured(
                RULE,
                Place.NOWHERE,
                Words.of("too wide"),
                Finding.Measure.lengths(0.7, 0.5),
                "narrow it")
            .about(subject("B9", 0.7));
    assertThat(Findings.grouped(List.of(of("B1", 0.6), other, apart(), apart()))).hasSize(4);
  }

  private static Finding apart() {
    return Finding.of(RULE, Place.NOWHERE, "about nothing", "none");
  }

  private static Finding of(String bay, double width) {
    return Finding.measured(
            RULE,
            Place.NOWHERE,
            Words.of("too wide"),
            Finding.Measure.lengths(width, 0.56),
            "narrow it")
        .about(subject(bay, width));
  }

  private static Finding.Subject subject(String bay, double width) {
    return new Finding.Subject(
        "deck-1/field-1", bay, Place.NOWHERE, Optional.of(Quantity.length(width)));
  }

  @Test
  void anInputErrorCarriesItsPlaceAndAdvice() {
    InputException e = new InputException(Place.text(2, 9), "what", "advice");
    assertThat(e).hasMessage("line 2, column 9: what");
    assertThat(e.place()).isEqualTo(Place.text(2, 9));
    assertThat(e.advice()).isEqualTo("advice");
  }
}
