package org.underlee.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

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
    assertThat(plain.fix()).contains("narrow it");
    Finding.Measure measure = new Finding.Measure(600, 560, "mm");
    assertThat(Finding.measured(RULE, Place.NOWHERE, "wide", measure, "narrow it").measure())
        .isEqualTo(Optional.of(measure));
  }

  @Test
  void anInputErrorCarriesItsPlaceAndAdvice() {
    InputException e = new InputException(Place.text(2, 9), "what", "advice");
    assertThat(e).hasMessage("line 2, column 9: what");
    assertThat(e.place()).isEqualTo(Place.text(2, 9));
    assertThat(e.advice()).isEqualTo("advice");
  }
}
