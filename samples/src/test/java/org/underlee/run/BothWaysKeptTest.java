package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.framing.Field;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.samples.HardCase;
import org.underlee.samples.HardCases;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.step.StepFile;
import org.underlee.writeback.Strip;

/**
 * A field that falls both ways, from asking for it to checking it and taking it to a new export.
 */
class BothWaysKeptTest {
  private static final String NAME = "deck.ifc";
  private static final SurveyRequest BOTH = SurveyRequest.PLAIN.bothWays(Set.of("deck-1/field-1"));

  private static byte[] model(Mix mix) {
    HardCase free =
        HardCases.all().stream()
            .filter(h -> h.deck().name().equals("both-ways"))
            .findFirst()
            .orElseThrow();
    return IfcEmitter.emit(free.deck(), mix);
  }

  private static Design design(Mix mix, String kit) {
    return DeckRun.design(
        DeckRun.survey(model(mix), NAME, BOTH),
        Scope.OUTSIDE.with(Wishes.NONE.withBoardsOff()),
        KitReader.named(kit));
  }

  private static List<String> fields(Survey survey) {
    return survey.framing().fields().map(Field::id).toList();
  }

  @Test
  void whatIsWrittenIsCheckedAsTwoFieldsWithoutBeingToldAgain() {
    Design design = design(Mix.PLAIN, "formed-aluminium");
    Checked checked =
        DeckRun.check(design.written().bytes(), NAME, SurveyRequest.PLAIN, Optional.empty());
    assertThat(fields(checked.survey())).containsExactly("deck-1/field-1", "deck-1/field-2");
    assertThat(checked.proof().dryFraction())
        .isCloseTo(design.proof().dryFraction(), within(1e-6))
        .isGreaterThan(0.999);
    assertThat(checked.proof().outlets()).hasSize(2);
  }

  @ParameterizedTest
  @EnumSource(Mix.Schema.class)
  void stripGivesTheDesignersBytesBack(Mix.Schema schema) {
    for (String kit : List.of("formed-aluminium", "ribbed-sheet")) {
      Mix mix = Mix.PLAIN.with(schema);
      byte[] written = design(mix, kit).written().bytes();
      assertThat(Strip.original(written).orElseThrow().bytes()).isEqualTo(model(mix));
    }
  }

  @Test
  void aNewExportKeepsBothWaysAndEveryName() {
    byte[] written = design(Mix.PLAIN, "formed-aluminium").written().bytes();
    Resynced again =
        Resync.of(
            StepFile.of(model(Mix.PLAIN), NAME),
            StepFile.of(written, NAME),
            List.of(),
            Optional.empty(),
            Optional.empty());
    assertThat(again.decisions()).allMatch(Resynced.Decision::kept);
    assertThat(again.bays()).hasSize(6).allMatch(b -> b.kind() == BayChange.Kind.KEPT);
    assertThat(again.design().layout().fields())
        .extracting(FieldLayout::field)
        .containsExactly("deck-1/field-1", "deck-1/field-2");
  }

  @ParameterizedTest
  @ValueSource(strings = {"formed-aluminium", "ribbed-sheet", "membrane-drape"})
  void eachFamilyServesBothSidesAtOneHeight(String kit) {
    Design design = design(Mix.PLAIN, kit);
    assertThat(design.layout().fields()).hasSize(2);
    assertThat(design.layout().fields().get(0).seatHigh())
        .isEqualTo(design.layout().fields().get(1).seatHigh());
    assertThat(design.layout().parts().stream().anyMatch(p -> p.kind() == PartKind.RIDGE_CAP))
        .isEqualTo(!kit.equals("membrane-drape"));
  }

  @Test
  void aFieldAtAHouseIsRefusedAndAFieldThatIsNotThereIsAnError() {
    byte[] atHouse = IfcEmitter.emit(HardCases.all().get(0).deck(), Mix.PLAIN);
    Survey survey = DeckRun.survey(atHouse, NAME, BOTH);
    assertThat(fields(survey)).containsExactly("deck-1/field-1");
    assertThat(survey.findings()).extracting(Finding::rule).contains(Rules.BOTH_WAYS_AT_HOUSE);
    SurveyRequest wrong = SurveyRequest.PLAIN.bothWays(Set.of("deck-7/field-1"));
    assertThatThrownBy(() -> DeckRun.survey(atHouse, NAME, wrong))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("deck-7/field-1");
  }

  @Test
  void theOverridesFileTellsItByAJoistInItsSecondSchema() {
    Survey told = DeckRun.survey(model(Mix.PLAIN), NAME, BOTH);
    String text = told.request().overrides().orElseThrow().text();
    assertThat(text).contains("underlee/overrides/2").contains("\"bothWays\":[\"");
    Overrides read = Overrides.read(text, "overrides");
    assertThat(read.told().bothWays()).hasSize(1);
    SurveyRequest byJoist = new SurveyRequest(Optional.empty(), Optional.of(read), List.of());
    assertThat(fields(DeckRun.survey(model(Mix.PLAIN), NAME, byJoist))).hasSize(2);
  }
}
