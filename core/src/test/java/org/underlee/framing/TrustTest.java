package org.underlee.framing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.framing.TimberDeck.D;
import static org.underlee.framing.TimberDeck.L;
import static org.underlee.framing.TimberDeck.Z;

import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;

/** More evidence makes a role surer, and evidence against it less sure; both are told. */
class TrustTest {
  private static RoleGiven role(TimberDeck deck, String name) {
    return deck.frame().roles().stream()
        .filter(r -> r.member().id().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void threeLinesAreLessSureThanSix() {
    assertThat(role(TimberDeck.plain(3), "j2").confidence())
        .isLessThan(role(TimberDeck.plain(6), "j2").confidence());
    assertThat(role(TimberDeck.plain(3), "j2").why()).contains("no more than three lines");
  }

  @Test
  void joistsUnderBoardsAreSurer() {
    TimberDeck boarded = TimberDeck.plain(6);
    for (int i = 0; i < 10; i++) {
      boarded.bar("IfcMember", "b" + i, 0, i * 0.14, Z + D, 2.038, i * 0.14 + 0.13, Z + D + 0.03);
    }
    assertThat(boarded.role("b3")).isEqualTo("deck-board");
    assertThat(role(boarded, "j2").confidence())
        .isGreaterThan(role(TimberDeck.plain(6), "j2").confidence());
  }

  @Test
  void joistsThatNothingHoldsAtOneEndAreLessSure() {
    assertThat(role(TimberDeck.plain(6).without("rim"), "j2").confidence())
        .isLessThan(role(TimberDeck.plain(6), "j2").confidence());
  }

  @Test
  void whichOfTwoEdgesIsTheLedgerIsEvenWhenNothingTellsTheHouseSide() {
    TimberDeck deck = TimberDeck.open(6).renamed("bar on the house", "bar");
    assertThat(role(deck, "bar").confidence()).isCloseTo(0.5, within(1e-9));
    assertThat(role(deck, "rim").confidence()).isCloseTo(0.5, within(1e-9));
    assertThat(role(TimberDeck.plain(6), "bar on the house").confidence()).isGreaterThan(0.9);
  }

  @Test
  void aNameThatSaysOtherwiseIsFollowedByANoteWithBothReadings() {
    TimberDeck deck = TimberDeck.plain(6).renamed("j2", "Stringer");
    Framing framing = deck.frame();
    assertThat(role(deck, "Stringer").role()).isEqualTo(Role.JOIST);
    assertThat(role(deck, "Stringer").confidence())
        .isLessThan(role(TimberDeck.plain(6), "j2").confidence());
    Finding note =
        framing.findings().stream()
            .filter(f -> f.rule().id().equals("name-disagrees"))
            .findFirst()
            .orElseThrow();
    assertThat(note.message()).contains("read as joist").contains("called like a stringer");
    assertThat(note.place().globalId()).contains("Stringer");
  }

  @Test
  void namesThatAgreeOrSayNothingRaiseNoNote() {
    assertThat(TimberDeck.plain(6).frame().findings()).isEmpty();
    assertThat(TimberDeck.plain(6).renamed("j2", "Rim joist").frame().findings()).isEmpty();
  }

  @Test
  void everyConfidenceIsBetweenEvenAndSure() {
    TimberDeck deck =
        TimberDeck.plain(3).bar("IfcBeam", "beam", -0.2, L - 1, Z - 0.2, 1.2, L - 0.9, Z);
    assertThat(deck.frame().roles())
        .isNotEmpty()
        .allSatisfy(r -> assertThat(r.confidence()).isBetween(0.5, 1.0));
  }
}
