package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.KitReader;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.Survey;

/** A gutter has the fewest outlets that carry the rain. */
class OutletsByRainTest {
  private static final List<String> RAINS =
      List.of("50mm/h", "100mm/h", "300mm/h", "600mm/h", "1500mm/h");

  private static Design inRain(String rain) {
    SampleDeck deck = PineDeck.sample();
    Survey survey = DeckRun.survey(IfcEmitter.emit(deck, deck.ownMix()), "deck.ifc");
    Storm storm = RainData.builtIn().meant(rain).orElseThrow();
    return DeckRun.design(survey, Scope.OUTSIDE, KitReader.builtIn(), storm);
  }

  private static long count(Design design, PartKind kind) {
    return design.layout().parts().stream().filter(p -> p.kind() == kind).count();
  }

  @Test
  void moreRainNeverHasFewerOutletsAndEachHasItsDownspoutAndItsReason() {
    List<Long> outlets = new ArrayList<>();
    for (String rain : RAINS) {
      Design design = inRain(rain);
      outlets.add(count(design, PartKind.OUTLET));
      assertThat(count(design, PartKind.DOWNSPOUT)).isEqualTo(count(design, PartKind.OUTLET));
      assertThat(design.proof().outlets())
          .as(rain)
          .hasSameSizeAs(
              design.layout().parts().stream().filter(p -> p.kind() == PartKind.OUTLET).toList());
    }
    assertThat(outlets).isSorted().first().isEqualTo(1L);
    assertThat(outlets.get(outlets.size() - 1)).isGreaterThan(1);
  }

  @Test
  void waterIsKeptAsWellByManyOutletsAsByOne() {
    double one = inRain("50mm/h").proof().dryFraction();
    assertThat(inRain("1500mm/h").proof().dryFraction()).isGreaterThan(one - 0.001);
  }
}
