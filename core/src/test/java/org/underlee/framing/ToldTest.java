package org.underlee.framing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.framing.TimberDeck.D;
import static org.underlee.framing.TimberDeck.L;
import static org.underlee.framing.TimberDeck.W;
import static org.underlee.framing.TimberDeck.Z;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Finding;

/** What the user says stands over what the geometry says, and what cannot be followed is said. */
class ToldTest {
  private static Told role(String id, Role role) {
    return new Told(Map.of(id, role), Set.of(), Map.of());
  }

  private static List<String> rules(Framing framing) {
    return framing.findings().stream().map(Finding::rule).map(r -> r.id()).toList();
  }

  @Test
  void aMemberThatIsToldToBeNoFramingIsNoJoist() {
    Framing before = TimberDeck.plain(6).frame();
    Framing after = TimberDeck.plain(6).frame(new Told(Map.of(), Set.of("j6"), Map.of()));
    assertThat(before.fields().findFirst().orElseThrow().lines()).hasSize(6);
    assertThat(after.fields().findFirst().orElseThrow().lines()).hasSize(5);
    assertThat(after.roleOf("j6")).isEmpty();
    assertThat(rules(after)).isEqualTo(rules(before));
  }

  @Test
  void theEndWithTheLedgerThatIsToldIsTheHighEnd() {
    TimberDeck deck = TimberDeck.open(5).renamed("bar on the house", "bar");
    assertThat(rules(deck.frame())).contains("fall-direction-assumed");
    Framing told = deck.frame(role("rim", Role.LEDGER));
    Field field = told.fields().findFirst().orElseThrow();
    assertThat(field.frame().y().y()).isCloseTo(-1, within(1e-9));
    assertThat(rules(told)).isEmpty();
    RoleGiven given =
        told.roles().stream().filter(r -> r.member().id().equals("rim")).findFirst().orElseThrow();
    assertThat(given.role()).isEqualTo(Role.LEDGER);
    assertThat(given.confidence()).isEqualTo(1);
    assertThat(given.why()).isEqualTo("set right by hand");
  }

  @Test
  void whatIsToldStandsOverAWall() {
    Field field =
        TimberDeck.plain(5).frame(role("rim", Role.LEDGER)).fields().findFirst().orElseThrow();
    assertThat(field.frame().y().y()).isCloseTo(-1, within(1e-9));
    assertThat(field.fallWhy()).contains("set right by hand");
  }

  @Test
  void aRimMayBeToldToBeAFlushBeam() {
    Framing told = TimberDeck.plain(5).frame(role("rim", Role.FLUSH_BEAM));
    assertThat(told.roleOf("rim")).contains(Role.FLUSH_BEAM);
    assertThat(rules(told)).isEmpty();
  }

  @Test
  void aDeckMayBeToldToBeInsideByOneOfItsJoists() {
    Framing told = TimberDeck.plain(5).frame(new Told(Map.of(), Set.of(), Map.of("j3", false)));
    assertThat(told.decks().get(0).outside())
        .isEqualTo(new Deck.Judgement(false, "set right by hand"));
  }

  @Test
  void anElementThatIsGoneIsNamed() {
    Framing told = TimberDeck.plain(5).frame(role("gone", Role.LEDGER));
    assertThat(rules(told)).containsExactly("override-stale");
    assertThat(told.findings().get(0).place().globalId()).contains("gone");
  }

  @Test
  void aRoleThatDoesNotFitThePlaceIsNotGivenAndSaid() {
    TimberDeck deck = TimberDeck.plain(5).bar("IfcBeam", "far", 9, 9, Z, 9 + L, 9 + W, Z + D);
    Framing told = deck.frame(role("far", Role.BLOCKING));
    assertThat(rules(told)).containsExactly("override-not-followed");
    assertThat(told.findings().get(0).message()).contains("a blocking").contains("no framing");
    assertThat(told.roleOf("far")).isEmpty();
  }

  @Test
  void outsideToldOfWhatIsInNoDeckIsSaid() {
    Framing told = TimberDeck.plain(5).frame(new Told(Map.of(), Set.of(), Map.of("house", true)));
    assertThat(rules(told)).containsExactly("override-not-followed");
  }

  @Test
  void nothingToldChangesNothing() {
    assertThat(TimberDeck.plain(6).frame(Told.NOTHING).roles())
        .isEqualTo(TimberDeck.plain(6).frame().roles());
  }
}
