package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.drainage.flow.RainData;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Derivation;
import org.underlee.layout.Dimension;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.run.SurveyRequest;
import org.underlee.samples.HardCase;
import org.underlee.samples.HardCases;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;

/** What runs down the face behind the gutter is led in, whatever catches the water. */
class BackFlashingTest {
  private static final List<String> KITS =
      List.of("formed-aluminium", "membrane-drape", "ribbed-sheet");

  /** Beside a post the notched flashing leaves a joist's width, square metres. */
  private static final double BESIDE_POSTS = 0.0031;

  static List<HardCase> cases() {
    return HardCases.all();
  }

  private static Layout layOut(Survey survey, Kit kit) {
    return DeckRun.layOut(
        survey,
        Scope.OUTSIDE.with(Wishes.NONE.withBoardsOff()),
        kit,
        RainData.builtIn().service(RainData.ANYWHERE));
  }

  private static Survey survey(HardCase hard) {
    return DeckRun.survey(
        IfcEmitter.emit(hard.deck(), Mix.PLAIN),
        "deck.ifc",
        SurveyRequest.PLAIN.bothWays(hard.bothWays()));
  }

  private static double behind(DrainCase one) {
    return WaterProver.prove(one).leaks().stream()
        .filter(l -> l.cause() == LeakCause.BEHIND_GUTTER)
        .mapToDouble(Leak::area)
        .sum();
  }

  private static DrainCase without(DrainCase one, String part) {
    List<Piece> pieces = one.pieces().stream().filter(p -> !p.id().contains(part)).toList();
    assertThat(pieces).hasSizeLessThan(one.pieces().size());
    return new DrainCase(one.field(), one.frame(), one.catchments(), pieces, one.ground());
  }

  @ParameterizedTest
  @MethodSource("cases")
  void nothingFallsBehindTheGutterButWithoutTheFlashingItWould(HardCase hard) {
    Survey survey = survey(hard);
    DrainCase whole =
        DrainCases.of(survey.bays(), layOut(survey, KitReader.named(hard.kit()))).get(0);
    assertThat(behind(without(whole, "/flashing-"))).isGreaterThan(10 * behind(whole));
    assertThat(behind(whole)).isLessThan(BESIDE_POSTS);
  }

  @Test
  void itsSizesAreTheKitsAndSaySo() {
    Survey survey =
        DeckRun.survey(IfcEmitter.emit(SampleDecks.plain(2600, 400, 5), Mix.PLAIN), "deck.ifc");
    for (String name : KITS) {
      Kit own = KitReader.named(name);
      Kit wide = own.with(DrainValue.FLASHING_OVER, own.get(DrainValue.FLASHING_OVER) + 0.02, "me");
      Part here = flashing(layOut(survey, own));
      Part there = flashing(layOut(survey, wide));
      assertThat(there.width()).isCloseTo(here.width() + 0.02, within(1e-9));
      assertThat(width(there).value()).isCloseTo(there.width(), within(1e-9));
      assertThat(width(there).steps())
          .extracting(Derivation.Step::origin)
          .contains(new Derivation.KitValue("flashingOverMm", "me"));
    }
  }

  private static Derivation width(Part part) {
    return part.why().derivations().stream()
        .filter(d -> d.dimension() == Dimension.WIDTH)
        .findFirst()
        .orElseThrow();
  }

  private static Part flashing(Layout layout) {
    return layout.parts().stream()
        .filter(p -> p.kind() == PartKind.FLASHING)
        .findFirst()
        .orElseThrow();
  }
}
