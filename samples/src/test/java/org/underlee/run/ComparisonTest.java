package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.check.DrainSet;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Family;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Layout;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.report.CompareJson;
import org.underlee.report.CompareText;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;
import org.underlee.takeoff.Buying;
import org.underlee.units.Lengths.UnitSystem;

class ComparisonTest {
  private static final Storm ANYWHERE = RainData.builtIn().service(RainData.ANYWHERE);

  private static Comparison all;
  private static Survey survey;

  @BeforeAll
  static void compare() {
    survey =
        DeckRun.survey(IfcEmitter.emit(SampleDecks.plain(3000, 406.4, 5), Mix.PLAIN), "deck.ifc");
    all = compare(List.of(48.0), List.of(Preference.HEADROOM));
  }

  private static Comparison compare(List<Double> falls, List<Preference> order) {
    return Comparison.of(
        survey, Scope.OUTSIDE, KitReader.allBuiltIn(), falls, order, Buying.PLAIN, ANYWHERE);
  }

  @Test
  void everyFamilyThatServesTheDeckIsThereAndTheDrapeAloneNeedsTheBoardsOff() {
    assertThat(all.arrangements())
        .extracting(a -> a.kit().family())
        .contains(Family.PANS, Family.DRAPE, Family.SHEET);
    assertThat(all.arrangements())
        .allSatisfy(a -> assertThat(a.boardsOff()).isEqualTo(a.kit().family() == Family.DRAPE));
  }

  @Test
  void anArrangementSaysWhatItsDesignSays() {
    for (Arrangement a : all.arrangements()) {
      var wishes = org.underlee.layout.Wishes.NONE.endingAt(a.lowEnd());
      Scope scope = Scope.OUTSIDE.with(a.boardsOff() ? wishes.withBoardsOff() : wishes);
      Design design = DeckRun.design(survey, scope, a.kit());
      assertThat(a.dryFraction()).isEqualTo(design.proof().dryFraction());
      assertThat(a.fields()).isEqualTo(design.layout().fields());
    }
  }

  @Test
  void anArrangementSaysWhatItsGutterIsRatedAtAndTheLeastThatWouldDo() {
    for (Arrangement a : all.arrangements()) {
      DrainSet drains = a.drains().orElseThrow();
      long outlets =
          a.fields().stream()
              .flatMap(f -> f.parts().stream())
              .filter(p -> p.kind() == PartKind.OUTLET)
              .count();
      assertThat(drains.own().outlets()).isEqualTo((int) outlets);
      assertThat(drains.own().width()).isEqualTo(a.kit().get(DrainValue.GUTTER_WIDTH));
      assertThat(drains.use()).isBetween(0.01, 1.0);
      assertThat(drains.least()).isPresent();
    }
    assertThat(CompareJson.write(all)).contains("\"least\"");
    assertThat(CompareText.write(all, UnitSystem.METRIC)).contains("least gutter 102 mm x 102 mm");
  }

  /**
   * The use grows with the rain: a stretch that takes the share s of it takes 2 s of twice as much.
   */
  @Test
  void whatCarriesSoMuchRainRunsOverInMoreThanThat() {
    DrainSet usual = all.arrangements().get(0).drains().orElseThrow();
    Kit kit = all.arrangements().get(0).kit();
    Storm over = Storm.given(ANYWHERE.intensity() * 1.05 / usual.use());
    DrainSet hard =
        Comparison.of(survey, Scope.OUTSIDE, List.of(kit), List.of(), List.of(), Buying.PLAIN, over)
            .arrangements()
            .get(0)
            .drains()
            .orElseThrow();
    assertThat(hard.own().outlets() > usual.own().outlets() || hard.use() > 1).isTrue();
  }

  /** More outlets than the usual rain asks for: both count them for the rain that is named. */
  @Test
  void aHarderRainIsReckonedWithAsItsDesignDoes() {
    Survey wide =
        DeckRun.survey(IfcEmitter.emit(SampleDecks.plain(3000, 406.4, 21), Mix.PLAIN), "deck.ifc");
    Storm hard = RainData.builtIn().meant("600mm/h").orElseThrow();
    List<Kit> kit = List.of(KitReader.builtIn());
    Arrangement a =
        Comparison.of(wide, Scope.OUTSIDE, kit, List.of(), List.of(), Buying.PLAIN, hard)
            .arrangements()
            .get(0);
    Layout hardest = DeckRun.layOut(wide, Scope.OUTSIDE, a.kit(), hard);
    assertThat(a.fields()).isEqualTo(hardest.fields());
    assertThat(a.fields())
        .isNotEqualTo(
            DeckRun.layOut(
                    wide, Scope.OUTSIDE, a.kit(), RainData.builtIn().service(RainData.ANYWHERE))
                .fields());
  }

  /** Each figure of the one compared with each of the other, one by one. */
  @Test
  void whatIsMarkedIsNowhereBetterThanWhatItNamesAndTheRestBeatEachOtherSomewhere() {
    List<Arrangement> told = all.arrangements();
    assertThat(told).anyMatch(a -> a.dominatedBy().isPresent());
    for (Arrangement a : told) {
      a.dominatedBy()
          .ifPresent(
              n -> assertThat(figures(told.get(n - 1), a).allMatch(d -> d >= -1e-3)).isTrue());
    }
    List<Arrangement> best = told.stream().filter(a -> a.dominatedBy().isEmpty()).toList();
    assertThat(best)
        .allSatisfy(
            a ->
                assertThat(best)
                    .filteredOn(b -> b != a)
                    .allMatch(b -> figures(a, b).anyMatch(d -> d > 0)));
  }

  /** How much better the one is than the other, in each figure. */
  private static Stream<Double> figures(Arrangement a, Arrangement b) {
    return Stream.of(
        a.dryFraction() - b.dryFraction(),
        a.headroomOrNone() - b.headroomOrNone(),
        (double) b.partsCut() - a.partsCut(),
        (double) b.bought() - a.bought(),
        a.fall() - b.fall(),
        (b.boardsOff() ? 1.0 : 0) - (a.boardsOff() ? 1 : 0));
  }

  @Test
  void whatIsPreferredComesFirstAmongEquallyDryOnes() {
    Comparison fewest = compare(List.of(), List.of(Preference.PIECES));
    List<Arrangement> best =
        fewest.arrangements().stream().filter(a -> a.dominatedBy().isEmpty()).toList();
    assertThat(best)
        .isSortedAccordingTo(
            Comparator.comparingLong((Arrangement a) -> -Math.round(a.dryFraction() * 100))
                .thenComparingInt(Arrangement::bought));
  }

  @Test
  void theReportsNameEveryArrangementAndAreTheSameTwice() {
    String json = CompareJson.write(all);
    assertThat(json).contains("\"schema\": \"underlee/compare/1\"".replace(": ", " : "));
    assertThat(CompareJson.write(compare(List.of(48.0), List.of(Preference.HEADROOM))))
        .isEqualTo(json);
    String text = CompareText.write(all, UnitSystem.METRIC);
    assertThat(text.lines().filter(l -> l.matches(" *\\d+  .*")))
        .hasSize(all.arrangements().size());
    assertThat(text).contains("To lay one out: design FILE --kit ");
  }
}
