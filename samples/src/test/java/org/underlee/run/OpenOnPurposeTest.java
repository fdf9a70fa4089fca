package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.LeakCause;
import org.underlee.finding.Finding;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;

/** What the user asked for is told once, and is still counted in the dry share. */
class OpenOnPurposeTest {
  private static final Survey DECK =
      DeckRun.survey(IfcEmitter.emit(SampleDecks.plain(2438.4, 406.4, 6), Mix.PLAIN), "deck.ifc");

  private static Design design(Wishes wishes) {
    return DeckRun.design(DECK, Scope.OUTSIDE.with(wishes), KitReader.builtIn());
  }

  private static List<Finding> of(Design design, String rule) {
    return design.findings().stream().filter(f -> f.rule().id().equals(rule)).toList();
  }

  @Test
  void aBayLeftOpenOnPurposeIsToldOnceAndItsRainIsCounted() {
    Design open = design(Wishes.NONE.leavingOpen(Set.of("B2")));
    assertThat(of(open, "bay-left-open")).hasSize(1);
    assertThat(of(open, "open-deck-drips")).isEmpty();
    assertThat(open.proof().leaks()).anyMatch(l -> l.cause() == LeakCause.OPEN_BAY);
    assertThat(open.proof().dryFraction())
        .isLessThan(design(Wishes.NONE).proof().dryFraction() - 0.1);
  }

  @Test
  void theCheckOfTheModelTellsItOnceAsTheDesignDoes() {
    Design open = design(Wishes.NONE.leavingOpen(Set.of("B2")));
    Checked checked =
        DeckRun.check(open.written().bytes(), "d.ifc", SurveyRequest.PLAIN, Optional.empty());
    assertThat(checked.findings().stream().filter(f -> f.rule().id().equals("bay-left-open")))
        .hasSize(1);
    assertThat(checked.findings()).noneMatch(f -> f.rule().id().equals("open-deck-drips"));
    assertThat(checked.proof().leaks()).anyMatch(l -> l.cause() == LeakCause.OPEN_BAY);
  }
}
