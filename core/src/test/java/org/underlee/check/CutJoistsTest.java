package org.underlee.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;
import org.underlee.framing.TimberDeck;
import org.underlee.units.Lengths;

/** What a joist may lose, by IRC R502.8.1, as an open house model quotes it. */
class CutJoistsTest {
  private static final double D = TimberDeck.D;

  /** A 2x10 is 9 1/4 in deep: 3.083 in of hole, 1.542 in of notch, 2.3125 in at an end. */
  @Test
  void aTwoByTenMayLoseWhatR50281Says() {
    JoistSection.Most most = JoistSection.Most.of(9.25 * Lengths.INCH);
    assertThat(most.hole() / Lengths.INCH).isCloseTo(3.083, within(0.001));
    assertThat(most.notch() / Lengths.INCH).isCloseTo(1.542, within(0.001));
    assertThat(most.endNotch() / Lengths.INCH).isCloseTo(2.3125, within(0.001));
  }

  @Test
  void aNotchAtAnEndMayTakeAQuarterAndNoMore() {
    assertThat(found("joist-notched", CheckDecks.notchedAtItsEnd(D / 4 - 0.001))).isEmpty();
    assertThat(found("joist-notched", CheckDecks.notchedAtItsEnd(D / 4 + 0.001))).hasSize(1);
  }

  @Test
  void aHoleMayTakeAThirdAndIsMeasured() {
    assertThat(found("joist-bored", CheckDecks.bored(D / 3 - 0.001))).isEmpty();
    List<Finding> found = found("joist-bored", CheckDecks.bored(D / 3 + 0.001));
    assertThat(found).hasSize(1);
    assertThat(found.get(0).measure().orElseThrow().measured().si())
        .isCloseTo(D / 3 + 0.001, within(1e-9));
  }

  private static List<Finding> found(String rule, TimberDeck deck) {
    return Checks.of(CheckCases.input(deck, CheckCases.kit())).findings().stream()
        .filter(f -> f.rule().id().equals(rule))
        .toList();
  }
}
