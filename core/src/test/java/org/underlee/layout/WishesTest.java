package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.framing.TimberDeck;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;

/** What the user fixes is what is laid out, or a finding says why not. */
class WishesTest {
  private static final TimberDeck DECK = TimberDeck.plain(5);
  private static final double SAME = 1e-9;

  private static Layout layOut(TimberDeck deck, Scope scope) {
    return Layouter.layOut(deck.frame(), deck.fieldBays(), scope, KitReader.builtIn());
  }

  private static Layout with(TimberDeck deck, Wishes wishes) {
    return layOut(deck, Scope.OUTSIDE.with(wishes));
  }

  private static Finding only(Layout layout, String rule) {
    List<Finding> found =
        layout.findings().stream().filter(f -> f.rule().id().equals(rule)).toList();
    assertThat(found).hasSize(1);
    return found.get(0);
  }

  /** Joists over a beam a metre before their ends. */
  private static TimberDeck onABeam(double beamTop) {
    double end = TimberDeck.L - 1;
    return TimberDeck.plain(5)
        .bar("IfcBeam", "beam", -0.1, end - 0.07, beamTop - TimberDeck.D, 1.8, end, beamTop);
  }

  @Test
  void aSeatLowerThanTheBestIsTakenAsItIs() {
    double best = with(DECK, Wishes.NONE).fields().get(0).seatHigh();
    Layout lower = with(DECK, Wishes.NONE.withSeat(best - 0.01));
    assertThat(lower.fields().get(0).seatHigh()).isCloseTo(best - 0.01, within());
    assertThat(lower.fields().get(0).binding().toString()).contains("set by you with --seat");
    assertThat(lower.fields().get(0).bays()).hasSize(4);
  }

  @Test
  void aSeatThatServesNoBayLeavesTheFieldEmptyAndSaysSo() {
    Layout none = with(DECK, Wishes.NONE.withSeat(0.5));
    assertThat(none.fields()).isEmpty();
    only(none, "field-not-served");
    assertThat(none.findings().stream().filter(f -> f.rule().id().equals("no-seat-height")))
        .hasSize(4)
        .allSatisfy(
            f ->
                assertThat(f.message().toString())
                    .contains("the seat that you asked for, 500 mm from the joist bottom")
                    .doesNotContain("more bays"));
  }

  @Test
  void aBayLeftOpenOnPurposeHasNoPartAndANote() {
    Layout layout = with(DECK, Wishes.NONE.leavingOpen(Set.of("B2")));
    assertThat(layout.fields().get(0).bays()).containsExactly("B1", "B3", "B4");
    assertThat(layout.parts()).noneMatch(p -> p.bay().equals(Optional.of("B2")));
    only(layout, "bay-left-open");
  }

  @Test
  void aBayThatIsNotThereIsRefusedByName() {
    assertThatThrownBy(() -> with(DECK, Wishes.NONE.leavingOpen(Set.of("B2", "B9"))))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("B9")
        .hasMessageNotContaining("B2");
  }

  @Test
  void theLowEndThatIsAskedForIsTakenWhereItIsThere() {
    TimberDeck deck = onABeam(TimberDeck.Z);
    for (String id : Layouter.lowEnds(deck.fieldBays())) {
      FieldLayout field = with(deck, Wishes.NONE.endingAt(id)).fields().get(0);
      assertThat(field.run() < TimberDeck.L - 0.9).isEqualTo(id.startsWith("beam"));
    }
    assertThat(Layouter.lowEnds(deck.fieldBays())).containsExactly("beam-1", "joist-end");
  }

  @Test
  void aLowEndThatIsNotThereIsAWarningThatNamesTheOneTaken() {
    Layout layout = with(DECK, Wishes.NONE.endingAt("beam-7"));
    assertThat(only(layout, "low-end-not-there").message()).contains("beam-7", "joist-end");
    assertThat(layout.fields().get(0).bays()).hasSize(4);
  }

  @Test
  void aStoreyOrADeckWithNothingOnItIsRefusedAndWhatIsThereIsNamed() {
    Scope upstairs = new Scope(Optional.empty(), Optional.of("Attic"), Wishes.NONE);
    assertThatThrownBy(() -> layOut(DECK, upstairs))
        .isInstanceOf(InputException.class)
        .hasMessageContainingAll("Attic", "Ground");
    assertThatThrownBy(() -> layOut(DECK, new Scope(Optional.of("deck-9"))))
        .isInstanceOf(InputException.class)
        .hasMessageContainingAll("deck-9", "deck-1");
  }

  @Test
  void theStoreyOfADeckByItsNameIsTheSameAsNoStorey() {
    Scope ground = new Scope(Optional.empty(), Optional.of("Ground"), Wishes.NONE);
    assertThat(layOut(DECK, ground)).isEqualTo(layOut(DECK, Scope.OUTSIDE));
  }

  /** At a steep fall the pans are below the beam's top when they come to it. */
  @Test
  void aBeamThatLeavesNoRoomIsWhereThePansEndAndTheRestIsSaidToDrip() {
    TimberDeck deck = onABeam(TimberDeck.Z);
    Kit steep = KitReader.builtIn().with(DrainValue.RUN_PER_FALL, 20, "test");
    Layout ended = Layouter.layOut(deck.frame(), deck.fieldBays(), Scope.OUTSIDE, steep);
    assertThat(ended.fields().get(0).run()).isLessThan(TimberDeck.L - 0.9);
    assertThat(only(ended, "open-beyond-the-beam").measure()).isPresent();
    Layout passed = with(deck, Wishes.NONE);
    assertThat(passed.fields().get(0).run()).isGreaterThan(TimberDeck.L - 0.1);
    assertThat(passed.findings()).noneMatch(f -> f.rule().id().equals("open-beyond-the-beam"));
  }

  private static org.assertj.core.data.Offset<Double> within() {
    return org.assertj.core.data.Offset.offset(SAME);
  }
}
