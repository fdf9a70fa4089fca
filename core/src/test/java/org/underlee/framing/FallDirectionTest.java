package org.underlee.framing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.framing.TimberDeck.D;
import static org.underlee.framing.TimberDeck.L;
import static org.underlee.framing.TimberDeck.W;
import static org.underlee.framing.TimberDeck.Z;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.finding.Finding;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** Each kind of evidence, at one end and at the other. */
class FallDirectionTest {
  /** The deck as it is, or turned half round: what is decided must turn with it. */
  private static Field field(TimberDeck deck, boolean turned) {
    Transform half = new Transform(new Vec3(1, 2, 0), Vec3.X.negated(), Vec3.Y.negated(), Vec3.Z);
    return turned ? deck.moved(half).field() : deck.field();
  }

  private static void assertFallsAwayFromTheBarAtTheHouse(TimberDeck deck, boolean turned) {
    Field field = field(deck, turned);
    assertThat(field.frame().y().dot(Vec3.Y)).isCloseTo(turned ? -1 : 1, within());
    assertThat(field.fallAssumed()).isFalse();
    assertThat(TimberDeck.names(field.supports(Role.LEDGER))).hasSize(1);
  }

  private static org.assertj.core.data.Offset<Double> within() {
    return org.assertj.core.api.Assertions.within(1e-9);
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void waterGoesAwayFromTheWallThatOneEndIsFixedTo(boolean turned) {
    TimberDeck deck = TimberDeck.plain(5);
    assertFallsAwayFromTheBarAtTheHouse(deck, turned);
    assertThat(field(deck, turned).fallWhy()).contains("IfcWall \"house\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"IfcWallStandardCase", "IfcCurtainWall", "IfcSlab"})
  void aSlabOrAnyKindOfWallIsTheHouse(String ifcClass) {
    TimberDeck deck =
        TimberDeck.open(5).bar(ifcClass, "house", -1, -W - 3, Z - 0.1, 4, -W, Z + 0.15);
    assertThat(deck.field().fallWhy()).contains(ifcClass);
    assertFallsAwayFromTheBarAtTheHouse(deck, false);
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void withoutAWallWaterGoesAwayFromWhatIsCalledALedger(boolean turned) {
    TimberDeck deck = TimberDeck.open(5).renamed("bar on the house", "LEDGER 2x8");
    assertFallsAwayFromTheBarAtTheHouse(deck, turned);
    assertThat(field(deck, turned).fallWhy()).contains("called a ledger");
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void withoutANameWaterGoesTowardTheEndThatStandsOnPosts(boolean turned) {
    TimberDeck deck =
        TimberDeck.open(5)
            .bar("IfcColumn", "foot", 0.1, L, 0, 0.14, L + W, Z)
            .bar("IfcColumn", "foot 2", 1.4, L, 0, 1.44, L + W, Z);
    assertFallsAwayFromTheBarAtTheHouse(deck, turned);
    assertThat(field(deck, turned).fallWhy()).contains("stands on posts");
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void withoutPostsWaterGoesTowardTheEndThatLiesOnABeam(boolean turned) {
    TimberDeck deck = TimberDeck.open(5).bar("IfcBeam", "carrier", 0, 2.4, Z - D, 1.64, 2.4 + W, Z);
    assertFallsAwayFromTheBarAtTheHouse(deck, turned);
    assertThat(field(deck, turned).fallWhy()).contains("lies on a beam");
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void wallsAtBothEndsDecideNothingAndTheNextEvidenceCounts(boolean turned) {
    TimberDeck deck =
        TimberDeck.plain(5)
            .bar("IfcWall", "garden wall", -1, L + W, 0, 4, L + W + 0.2, 2.9)
            .renamed("bar on the house", "the ledger");
    assertFallsAwayFromTheBarAtTheHouse(deck, turned);
    assertThat(field(deck, turned).fallWhy()).contains("called a ledger");
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void withoutAnyEvidenceTheFallIsAssumedAndTheFindingSaysSo(boolean turned) {
    TimberDeck deck = TimberDeck.open(5);
    Field field = field(deck, turned);
    assertThat(field.fallAssumed()).isTrue();
    assertThat(field.fallWhy()).contains("assumed");
    assertThat(deck.frame().findings())
        .extracting((Finding f) -> f.rule().id())
        .containsExactly("fall-direction-assumed");
  }
}
