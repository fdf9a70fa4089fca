package org.underlee.bay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.framing.TimberDeck.D;
import static org.underlee.framing.TimberDeck.L;
import static org.underlee.framing.TimberDeck.W;
import static org.underlee.framing.TimberDeck.Z;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

class BayFinderTest {
  private static final double EXACT = 1e-9;

  /** Clear width between joists 400 mm apart: 400 − 38 = 362 mm. */
  @Test
  void betweenNeighbouringLinesIsABay() {
    List<Bay> bays = TimberDeck.plain(5).bays();
    assertThat(bays).extracting(Bay::id).containsExactly("B1", "B2", "B3", "B4");
    for (Bay bay : bays) {
      assertThat(bay.clearWidthHigh()).isCloseTo(0.362, within(EXACT));
      assertThat(bay.clearWidthLow()).isCloseTo(0.362, within(EXACT));
      assertThat(bay.length()).isCloseTo(L, within(EXACT));
      assertThat(bay.depth()).isCloseTo(D, within(EXACT));
      assertThat(bay.blocking()).isEmpty();
      assertThat(bay.crossings()).isEmpty();
    }
    assertThat(bays.get(0).left().id()).isEqualTo("J1");
    assertThat(bays.get(0).right().id()).isEqualTo("J2");
  }

  @Test
  void joistsThatStopShortOfTheRimLeaveTheBayAsLongAsTheClearSpace() {
    TimberDeck deck = TimberDeck.open(4).wall();
    for (int i = 1; i <= 4; i++) {
      deck.without("j" + i).joist("j" + i, (i - 1) * 0.4, 0.003, L - 0.004);
    }
    assertThat(deck.bays()).hasSize(3);
    assertThat(deck.bays()).allSatisfy(b -> assertThat(b.length()).isCloseTo(L, within(EXACT)));
  }

  /** From the ledger to the high header and from the low header to the rim; between is the hole. */
  @Test
  void headersMakeSeveralBaysOfOne() {
    TimberDeck deck =
        TimberDeck.plain(5)
            .without("j3")
            .joist("high tail", 0.8, 0, 1)
            .bar("IfcBeam", "high header", 0.4 + W, 1, Z, 1.2, 1 + W, Z + D)
            .bar("IfcBeam", "low header", 0.4 + W, 2 - W, Z, 1.2, 2, Z + D)
            .joist("low tail", 0.8, 2, L);
    List<String> between =
        deck.bays().stream()
            .map(
                b ->
                    String.format(
                        java.util.Locale.ROOT,
                        "%s|%s %.3f..%.3f",
                        b.left().plies().get(0).id(),
                        b.right().plies().get(0).id(),
                        b.stretch().from(),
                        b.stretch().to()))
            .toList();
    assertThat(between)
        .containsExactlyInAnyOrder(
            "j1|j2 0.000..3.000",
            "j2|high tail 0.000..1.000",
            "j2|low tail 2.000..3.000",
            "high tail|j4 0.000..1.000",
            "low tail|j4 2.000..3.000",
            "j4|j5 0.000..3.000");
  }

  @Test
  void anOpeningWiderThanJoistsStandIsNoBay() {
    TimberDeck deck =
        TimberDeck.plain(6)
            .without("j3")
            .without("j4")
            .bar("IfcBeam", "header", 0.4 + W, 2 - W, Z, 1.6, 2, Z + D)
            .joist("tail 1", 0.8, 2, L)
            .joist("tail 2", 1.2, 2, L);
    assertThat(deck.bays()).hasSize(5);
    assertThat(deck.bays())
        .filteredOn(b -> b.left().plies().get(0).id().equals("j2"))
        .singleElement()
        .satisfies(b -> assertThat(b.stretch().from()).isCloseTo(2, within(EXACT)));
  }

  @Test
  void blockingStandsInItsBayAtItsStationAndIsNoCrossing() {
    TimberDeck deck =
        TimberDeck.plain(4)
            .bar("IfcMember", "full block", 0.4 + W, 1.5, Z, 0.8, 1.5 + W, Z + D)
            .bar("IfcMember", "shallow block", 0.4 + W, 2.2, Z + 0.09, 0.8, 2.2 + W, Z + D);
    Bay second = deck.bays().get(1);
    assertThat(second.blocking())
        .extracting(b -> b.member().id())
        .containsExactly("full block", "shallow block");
    Block full = second.blocking().get(0);
    assertThat(full.at()).isCloseTo(1.5 + W / 2, within(EXACT));
    assertThat(full.thickness()).isCloseTo(W, within(EXACT));
    assertThat(full.bottom()).isCloseTo(0, within(EXACT));
    assertThat(second.blocking().get(1).bottom()).isCloseTo(0.09, within(EXACT));
    assertThat(deck.bays()).allSatisfy(b -> assertThat(b.crossings()).isEmpty());
    assertThat(deck.bays().get(0).blocking()).isEmpty();
  }

  @Test
  void aPostThatRisesBetweenTheJoistsIsACrossingAndOneUnderThemIsNot() {
    TimberDeck deck =
        TimberDeck.plain(4)
            .bar("IfcColumn", "post", 0.5, L + W, 0, 0.6, L + W + 0.1, Z + D)
            .bar("IfcColumn", "guard", 0.55, L - 0.1, Z - 0.1, 0.65, L, Z + D + 1);
    assertThat(deck.role("guard")).isEqualTo("guard-post");
    Crossing crossing = only(deck, 1);
    assertThat(crossing.element().globalId()).isEqualTo("guard");
    assertThat(crossing.way()).isEqualTo(Way.THROUGH);
    assertThat(crossing.round()).isFalse();
    // what lies within 2 mm of the bay's ends is not looked at
    assertThat(crossing.at()).isCloseTo(L - 0.05, within(2e-3));
  }

  /** Its box meets the bay's, as the bay is not square to the world, but it is in none. */
  @Test
  void aPostBesideABayThatStandsTurnedIsNoCrossing() {
    double s = Math.sqrt(0.5);
    TimberDeck deck =
        TimberDeck.plain(4)
            .bar("IfcColumn", "post", 1.3, L + W, 0, 1.4, L + W + 0.1, Z)
            .bar("IfcColumn", "guard", 0.55, L + W, Z - 0.1, 0.65, L + W + 0.1, Z + D + 1)
            .moved(new Transform(Vec3.ZERO, new Vec3(s, s, 0), new Vec3(-s, s, 0), Vec3.Z));
    assertThat(deck.role("guard")).isEqualTo("guard-post");
    assertThat(deck.bays()).hasSize(3).allSatisfy(b -> assertThat(b.crossings()).isEmpty());
  }

  @ParameterizedTest
  @ValueSource(strings = {"through", "along", "across"})
  void insulationAroundAPipeIsOneCrossingWithItOverTheInsulation(String way) {
    Vec3 middle = new Vec3(0.6, 1.5, Z + 0.09);
    Vec3 reach =
        switch (way) {
          case "through" -> new Vec3(0, 0, 1.2);
          case "along" -> new Vec3(0, 0.8, 0);
          default -> new Vec3(0.1, 0, 0);
        };
    TimberDeck deck =
        TimberDeck.plain(4)
            .pipe("IfcPipeSegment", "pipe", middle.minus(reach), middle.plus(reach), 0.05)
            .pipe("IfcCovering", "lagging", middle.minus(reach), middle.plus(reach), 0.09);
    Crossing crossing = only(deck, 1);
    assertThat(crossing.element().globalId()).isEqualTo("pipe");
    assertThat(crossing.insulation().orElseThrow().globalId()).isEqualTo("lagging");
    assertThat(crossing.way().word()).isEqualTo(way);
    assertThat(crossing.size()).isCloseTo(0.09, within(1e-3));
  }

  @Test
  void aCoveringBesideAPipeIsACrossingOfItsOwn() {
    TimberDeck deck =
        TimberDeck.plain(4)
            .pipe("IfcPipeSegment", "pipe", new Vec3(0.55, 1, 1), new Vec3(0.55, 1, 4), 0.05)
            .pipe("IfcCovering", "other", new Vec3(0.55, 2, 1), new Vec3(0.55, 2, 4), 0.09);
    assertThat(deck.bays().get(1).crossings())
        .extracting(c -> c.element().globalId())
        .containsExactly("pipe", "other");
  }

  /** A carrier with a bend has no one direction: what counts is what of the bay it fills. */
  @Test
  void aBentBodyThatFillsTheBayFromJoistToJoistGoesAcross() {
    List<Vec2> bend =
        List.of(
            new Vec2(0.3, 1),
            new Vec2(0.9, 1),
            new Vec2(0.9, 1.9),
            new Vec2(0.8, 1.9),
            new Vec2(0.8, 1.1),
            new Vec2(0.3, 1.1));
    TimberDeck deck = TimberDeck.plain(4).prism("carrier", bend, Z + 0.05, Z + 0.1);
    assertThat(deck.bays().get(1).crossings().get(0).way()).isEqualTo(Way.ACROSS);
  }

  private static Crossing only(TimberDeck deck, int bay) {
    List<Bay> bays = deck.bays();
    for (int i = 0; i < bays.size(); i++) {
      if (i != bay) {
        assertThat(bays.get(i).crossings()).as("bay %s", i + 1).isEmpty();
      }
    }
    assertThat(bays.get(bay).crossings()).hasSize(1);
    return bays.get(bay).crossings().get(0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"IfcPipeSegment", "IfcFlowSegment", "IfcBuildingElementProxy"})
  void aPipeThatStandsInABayGoesThroughItWhateverItsClass(String ifcClass) {
    TimberDeck deck =
        TimberDeck.plain(4)
            .pipe(ifcClass, "pipe", new Vec3(0.55, 0.9, 0), new Vec3(0.55, 0.9, 3.5), 0.1143);
    Crossing crossing = only(deck, 1);
    assertThat(crossing.way()).isEqualTo(Way.THROUGH);
    assertThat(crossing.round()).isTrue();
    assertThat(crossing.size()).isCloseTo(0.1143, within(1e-6));
    assertThat(crossing.at()).isCloseTo(0.9, within(1e-6));
    // from the face of the second joist, at 0.438
    assertThat(crossing.across()).isCloseTo(0.55 - 0.438, within(1e-6));
  }

  @ParameterizedTest
  @ValueSource(strings = {"IfcCableCarrierSegment", "IfcBuildingElementProxy"})
  void aConduitInABayGoesAlongIt(String ifcClass) {
    TimberDeck deck =
        TimberDeck.plain(4)
            .pipe(ifcClass, "conduit", new Vec3(0.6, 0.5, 2.6), new Vec3(0.6, 2.5, 2.6), 0.05);
    Crossing crossing = only(deck, 1);
    assertThat(crossing.way()).isEqualTo(Way.ALONG);
    assertThat(crossing.size()).isCloseTo(0.05, within(1e-6));
    assertThat(crossing.at()).isCloseTo(1.5, within(1e-6));
    assertThat(crossing.stretch().length()).isCloseTo(2, within(1e-6));
    assertThat(crossing.across()).isCloseTo(0.6 - 0.438, within(1e-6));
  }

  @Test
  void aPipeAcrossTheJoistsCrossesEveryBay() {
    TimberDeck deck =
        TimberDeck.plain(4)
            .pipe("IfcPipeSegment", "pipe", new Vec3(-0.5, 1, 2.6), new Vec3(2, 1, 2.6), 0.05);
    for (Bay bay : deck.bays()) {
      assertThat(bay.crossings()).hasSize(1);
      Crossing crossing = bay.crossings().get(0);
      assertThat(crossing.way()).isEqualTo(Way.ACROSS);
      assertThat(crossing.size()).isCloseTo(0.05, within(1e-6));
      assertThat(crossing.at()).isCloseTo(1, within(1e-6));
      assertThat(crossing.across()).isCloseTo(0.362 / 2, within(1e-6));
    }
  }

  @Test
  void aPipeUnderTheDeckIsNoCrossingAndOneJustBelowIsOne() {
    TimberDeck far =
        TimberDeck.plain(4)
            .pipe("IfcPipeSegment", "pipe", new Vec3(-0.5, 1, 2), new Vec3(2, 1, 2), 0.05);
    assertThat(far.bays()).allSatisfy(b -> assertThat(b.crossings()).isEmpty());
    TimberDeck near =
        TimberDeck.plain(4)
            .pipe("IfcPipeSegment", "pipe", new Vec3(-0.5, 1, 2.4), new Vec3(2, 1, 2.4), 0.05);
    assertThat(near.bays()).allSatisfy(b -> assertThat(b.crossings()).hasSize(1));
  }

  @Test
  void aSquarePostThroughABayIsACrossingThatIsNotRound() {
    TimberDeck deck = TimberDeck.plain(4).bar("IfcColumn", "pergola post", 0.5, 1, 0, 0.6, 1.1, 5);
    Crossing crossing = only(deck, 1);
    assertThat(crossing.element().globalId()).isEqualTo("pergola post");
    assertThat(crossing.way()).isEqualTo(Way.THROUGH);
    assertThat(crossing.round()).isFalse();
    assertThat(crossing.size()).isCloseTo(0.1, within(1e-6));
    assertThat(crossing.at()).isCloseTo(1.05, within(1e-6));
    assertThat(crossing.across()).isCloseTo(0.55 - 0.438, within(1e-6));
  }

  @Test
  void whatTouchesAJoistFaceIsNotInTheBayOnItsOtherSide() {
    TimberDeck deck =
        TimberDeck.plain(4).bar("IfcOutlet", "box", 0.4 + W, 1, Z + 0.05, 0.5, 1.1, Z + 0.15);
    Crossing crossing = only(deck, 1);
    assertThat(crossing.element().ifcClass()).isEqualTo("IfcOutlet");
    assertThat(crossing.size()).isCloseTo(0.1, within(1e-9));
  }
}
