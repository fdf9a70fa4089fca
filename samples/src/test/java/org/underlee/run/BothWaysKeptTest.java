package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.finding.InputException;
import org.underlee.framing.Field;
import org.underlee.framing.HighLine;
import org.underlee.framing.Told;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.report.DesignText;
import org.underlee.report.SurveyText;
import org.underlee.samples.HardCase;
import org.underlee.samples.HardCases;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.step.StepFile;
import org.underlee.units.Lengths.UnitSystem;
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

  private static Resynced onTheSameExport(byte[] written) {
    return Resync.of(
        StepFile.of(model(Mix.PLAIN), NAME),
        StepFile.of(written, NAME),
        List.of(),
        Optional.empty(),
        Optional.empty());
  }

  @Test
  void aNewExportKeepsBothWaysAndEveryName() {
    byte[] written = design(Mix.PLAIN, "formed-aluminium").written().bytes();
    Resynced again = onTheSameExport(written);
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

  private static final double STATION = 2.2;

  private static SurveyRequest at(String station) {
    return SurveyRequest.PLAIN.bothWays(Set.of("deck-1/field-1@" + station));
  }

  private static Survey surveyAt(String station) {
    return DeckRun.survey(model(Mix.PLAIN), NAME, at(station));
  }

  private static HighLine line(Survey survey) {
    return survey.framing().fields().findFirst().flatMap(Field::highLine).orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(strings = {"2.2 m", "2200mm", "7' 2 5/8\""})
  void theLineIsWhereALengthAsPeopleWriteItPutsIt(String station) {
    HighLine line = line(surveyAt(station));
    assertThat(line.station()).isCloseTo(STATION, within(0.001));
    assertThat(line.asked()).isTrue();
    assertThat(SurveyText.write(surveyAt(station), UnitSystem.IMPERIAL))
        .contains(
            "the high line is 7' 2 5/8\" from the high end of the whole field, where you put");
  }

  @Test
  void theStationIsWrittenCheckedAndTakenToANewExport() {
    Design design =
        DeckRun.design(surveyAt("2.2m"), Scope.OUTSIDE, KitReader.named("formed-aluminium"));
    assertThat(DesignText.write(design, UnitSystem.METRIC))
        .contains(
            "the high line is 2200 mm from the high end of the whole field, where you put it");
    assertThat(design.layout().fields()).hasSize(2);
    assertThat(design.survey().bays().get(1).bays())
        .allSatisfy(b -> assertThat(b.stretch().to()).isCloseTo(STATION, within(1e-6)));
    byte[] written = design.written().bytes();
    Checked checked = DeckRun.check(written, NAME, SurveyRequest.PLAIN, Optional.empty());
    assertThat(line(checked.survey()).station()).isEqualTo(STATION);
    Resynced again = onTheSameExport(written);
    assertThat(again.decisions()).allMatch(Resynced.Decision::kept);
    assertThat(line(again.design().survey()).station()).isEqualTo(STATION);
    assertThat(again.again().bothWays()).containsExactly("deck-1/field-1@2.2m");
  }

  @Test
  void theOverridesFileTellsTheStationInItsThirdSchemaAndANameStandsOverIt() {
    Overrides told = surveyAt("2.2m").request().overrides().orElseThrow();
    assertThat(told.text()).contains("underlee/overrides/3").contains(":\"2.2m\"}");
    Overrides read = Overrides.read(told.text(), "overrides");
    SurveyRequest byJoist = new SurveyRequest(Optional.empty(), Optional.of(read), List.of());
    assertThat(line(DeckRun.survey(model(Mix.PLAIN), NAME, byJoist)).station()).isEqualTo(STATION);
    Survey named =
        DeckRun.survey(model(Mix.PLAIN), NAME, byJoist.bothWays(Set.of("deck-1/field-1@2.4m")));
    assertThat(line(named).station()).isEqualTo(2.4);
    assertThat(named.request().told().highLines()).hasSize(1).containsValue(2.4);
    Survey back =
        DeckRun.survey(model(Mix.PLAIN), NAME, byJoist.bothWays(Set.of("deck-1/field-1")));
    assertThat(line(back).asked()).isFalse();
    assertThat(back.request().told().highLines()).isEmpty();
  }

  @Test
  void twoJoistsOfAFieldThatTellTwoLinesAreAnError() {
    List<String> joists =
        Told.joists(
                DeckRun.survey(model(Mix.PLAIN), NAME, SurveyRequest.PLAIN)
                    .framing()
                    .fields()
                    .findFirst()
                    .orElseThrow())
            .toList();
    Told two =
        Told.NOTHING.fallingBothWays(Set.of(), Map.of(joists.get(0), 2.2, joists.get(1), 2.4));
    SurveyRequest request =
        new SurveyRequest(Optional.empty(), Optional.of(new Overrides("o", two)), List.of());
    assertThatThrownBy(() -> DeckRun.survey(model(Mix.PLAIN), NAME, request))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("deck-1/field-1 at 2.2m and 2.4m");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0.1m", "5.5m", "9m", "1.1m"})
  void aPlaceWhereTheLineCannotBeIsAFindingWhoseFixPutsItWhereItCan(String station) {
    Survey survey = surveyAt(station);
    assertThat(fields(survey)).containsExactly("deck-1/field-1");
    Finding finding =
        survey.findings().stream()
            .filter(f -> f.rule().equals(Rules.HIGH_LINE_NOT_THERE))
            .findFirst()
            .orElseThrow();
    assertThat(finding.words().quantities()).hasSizeGreaterThan(2);
    Fix.Option option = finding.fix().flatMap(Fix::action).orElseThrow().options().get(0);
    assertThat(option.name()).isEqualTo("--both-ways");
    Survey there =
        DeckRun.survey(
            model(Mix.PLAIN), NAME, SurveyRequest.PLAIN.bothWays(Set.of(option.value())));
    assertThat(fields(there)).hasSize(2);
    assertThat(there.findings()).extracting(Finding::rule).doesNotContain(finding.rule());
  }

  @Test
  void whatIsNoLengthAndAFieldNamedTwiceAreErrorsThatSayWhatToWrite() {
    assertThatThrownBy(() -> at("half way"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("\"half way\" is not a length");
    SurveyRequest twice =
        SurveyRequest.PLAIN.bothWays(Set.of("deck-1/field-1", "deck-1/field-1@2.2m"));
    assertThatThrownBy(() -> DeckRun.survey(model(Mix.PLAIN), NAME, twice))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("deck-1/field-1 was asked twice");
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
