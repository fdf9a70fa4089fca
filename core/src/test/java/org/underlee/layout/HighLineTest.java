package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.bay.Bay;
import org.underlee.bay.BothWays;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.DrainCases;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.WaterProver;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Vec3;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;

/** A free-standing deck whose joists run through falls both ways from a high line. */
class HighLineTest {
  private static final double W = TimberDeck.W;
  private static final double D = TimberDeck.D;
  private static final double Z = TimberDeck.Z;
  static final double HALF = 3;
  static final int JOISTS = 6;
  private static final double RIGHT = (JOISTS - 1) * 0.4 + W;

  static TimberDeck deck() {
    TimberDeck deck = new TimberDeck();
    for (int i = 0; i < JOISTS; i++) {
      deck.joist("j" + (i + 1), i * 0.4, -HALF, HALF);
    }
    for (int end : new int[] {-1, 1}) {
      double near = Math.min(end * HALF, end * (HALF + W));
      deck.bar("IfcBeam", "rim " + end, 0, near, Z, RIGHT, near + W, Z + D);
      for (double x : new double[] {0.1, RIGHT - 0.19}) {
        double y = near + W / 2;
        deck.bar("IfcColumn", "post " + end + " " + x, x, y - 0.045, 0, x + 0.09, y + 0.045, Z);
      }
    }
    return deck;
  }

  static TimberDeck blocked(TimberDeck deck, double... stations) {
    for (int i = 0; i + 1 < JOISTS; i++) {
      double y = stations[i % stations.length];
      String name = "block " + i;
      double x = i * 0.4 + W;
      deck.bar("IfcBeam", name, x, y - W / 2, Z, (i + 1) * 0.4, y + W / 2, Z + D);
    }
    return deck;
  }

  record Halves(Framing framing, List<FieldBays> bays) {
    static Optional<Halves> of(TimberDeck timber) {
      return of(timber, BothWays.of(timber.fieldBays().get(0), "deck-1/field-2"));
    }

    static Optional<Halves> at(TimberDeck timber, double station) {
      return of(timber, BothWays.at(timber.fieldBays().get(0), station, "deck-1/field-2"));
    }

    private static Optional<Halves> of(TimberDeck timber, Optional<List<FieldBays>> halves) {
      Framing whole = timber.frame();
      return halves.map(
          bays -> {
            Deck d = whole.decks().get(0);
            List<Field> fields = bays.stream().map(FieldBays::field).toList();
            Deck deck = new Deck(d.id(), d.storey(), d.top(), d.outside(), fields);
            return new Halves(
                new Framing(List.of(deck), whole.roles(), List.of(), List.of()), bays);
          });
    }

    Layout layOut(Kit kit, Wishes wishes) {
      Scope scope = new Scope(Optional.of("deck-1"), Optional.empty(), wishes);
      return Layouter.layOut(framing, bays, scope, kit);
    }
  }

  private static Halves halves(TimberDeck deck) {
    return Halves.of(deck).orElseThrow();
  }

  static Kit kit(String id) {
    return KitReader.allBuiltIn().stream().filter(k -> k.id().equals(id)).findFirst().orElseThrow();
  }

  @Test
  void bothHalvesAreAsLongFallApartAndKeepTheNamesOfTheirBays() {
    List<FieldBays> bays = halves(deck()).bays;
    assertThat(bays).hasSize(2);
    Field a = bays.get(0).field();
    Field b = bays.get(1).field();
    assertThat(a.frame().y().dot(b.frame().y())).isCloseTo(-1, within(1e-12));
    for (FieldBays half : bays) {
      assertThat(half.bays()).hasSize(JOISTS - 1);
      assertThat(half.bays())
          .allSatisfy(
              bay -> {
                assertThat(bay.stretch().from()).isCloseTo(0, within(1e-9));
                assertThat(bay.stretch().to()).isCloseTo(HALF, within(1e-9));
                assertThat(bay.high()).isEmpty();
                assertThat(bay.low()).isPresent();
              });
    }
    for (Bay own : bays.get(0).bays()) {
      Bay facing =
          bays.get(1).bays().stream()
              .filter(o -> o.id().equals(own.id()))
              .findFirst()
              .orElseThrow();
      assertThat(place(a, own).distance(place(b, facing))).isLessThan(1e-9);
    }
  }

  private static Vec3 place(Field field, Bay bay) {
    double v = bay.stretch().from();
    return field.frame().apply(new Vec3((bay.leftFace().at(v) + bay.rightFace().at(v)) / 2, v, 0));
  }

  static Layout layOut(Halves halves, String kit) {
    return halves.layOut(kit(kit), Wishes.NONE.withBoardsOff());
  }

  static DrainProof proof(Halves halves, Layout layout) {
    return WaterProver.prove(DrainCases.of(halves.bays, layout));
  }

  private static Stream<Part> caps(Layout layout) {
    return layout.parts().stream().filter(p -> p.kind() == PartKind.RIDGE_CAP);
  }

  @ParameterizedTest
  @ValueSource(strings = {"formed-aluminium", "rigid-vinyl", "galvanised-steel"})
  void everyDropOnADeckOfPansThatFallsBothWaysReachesTheOutletOfItsSide(String kit) {
    Halves halves = halves(deck());
    Layout layout = layOut(halves, kit);
    assertThat(layout.fields()).extracting(f -> f.bays().size()).containsExactly(5, 5);
    assertThat(caps(layout)).hasSize(JOISTS - 1);
    DrainProof proof = proof(halves, layout);
    assertThat(proof.dryFraction()).isCloseTo(1, within(1e-9));
    assertThat(proof.leaks()).isEmpty();
    assertThat(proof.outlets()).hasSize(2);
    assertThat(proof.outlets().get(0).area())
        .isCloseTo(proof.outlets().get(1).area(), within(1e-6));
  }

  @Test
  void withoutItsRidgeCapsTheDeckDripsBetweenThePansHeadsOfBothSides() {
    Halves halves = halves(deck());
    Layout layout = layOut(halves, "formed-aluminium");
    List<FieldLayout> bare = layout.fields().stream().map(HighLineTest::bare).toList();
    DrainProof proof = proof(halves, new Layout(layout.kit(), bare, List.of()));
    double gap = 2 * 0.006;
    double width = (JOISTS - 1) * (0.4 - W);
    // the rails' ledges catch some of it at each side
    assertThat(proof.rain() - proof.drained()).isBetween(0.5 * gap * width, 1.1 * gap * width);
  }

  private static FieldLayout bare(FieldLayout f) {
    return new FieldLayout(
        f.deck(),
        f.field(),
        f.storey(),
        f.seatHigh(),
        f.fall(),
        f.run(),
        f.lowEnd(),
        f.binding(),
        f.parts().stream().filter(p -> p.kind() != PartKind.RIDGE_CAP).toList(),
        f.links());
  }

  @Test
  void blockingInARowOnTheLineClosesTheHeadsAndTakesNoHeight() {
    for (double[] row : List.of(new double[] {0}, new double[] {-0.02, 0.02})) {
      Halves halves = halves(blocked(deck(), row));
      assertThat(halves.bays)
          .allSatisfy(
              half ->
                  assertThat(half.bays())
                      .allSatisfy(b -> assertThat(b.blocking()).isEmpty())
                      .allSatisfy(b -> assertThat(b.high()).isPresent()));
      Layout layout = layOut(halves, "formed-aluminium");
      assertThat(caps(layout)).isEmpty();
      assertThat(layout.parts()).filteredOn(p -> p.kind() == PartKind.HEAD_RAIL).hasSize(10);
      assertThat(layout.fields().get(0).seatHigh()).isGreaterThan(0.08);
      assertThat(proof(halves, layout).dryFraction()).isGreaterThan(0.999);
    }
  }

  @Test
  void sheetsAndMembranesFallBothWaysToo() {
    Layout sheets = layOut(halves(deck()), "ribbed-sheet");
    assertThat(caps(sheets)).hasSize(1);
    assertThat(proof(halves(deck()), sheets).dryFraction()).isGreaterThan(0.999);
    Layout membranes = layOut(halves(deck()), "membrane-drape");
    assertThat(caps(membranes)).isEmpty();
    assertThat(proof(halves(deck()), membranes).dryFraction()).isGreaterThan(0.99);
  }

  @Test
  void theLineIsAsNearToTheMiddleAsWhatStandsInTheBaysLetsIt() {
    assertThat(line(deck())).isCloseTo(0, within(1e-9));
    assertThat(line(blocked(deck(), 0.05))).isCloseTo(0.05, within(1e-9));
    double one = 0.1;
    TimberDeck single = deck().bar("IfcBeam", "one", W, one - W / 2, Z, 0.4, one + W / 2, Z + D);
    // in its own bay it closes the heads; the others go on under the ridge caps
    assertThat(line(single)).isCloseTo(one, within(1e-9));
    TimberDeck shallow =
        deck().bar("IfcBeam", "shallow", W, one - W / 2, Z, 0.4, one + W / 2, Z + D / 2);
    assertThat(line(shallow)).isCloseTo(one - W / 2 - 0.2, within(1e-9));
    TimberDeck pipe =
        deck().pipe("IfcPipeSegment", "drain", new Vec3(0.2, 0, 0), new Vec3(0.2, 0, 3), 0.1);
    assertThat(Math.abs(line(pipe))).isCloseTo(0.05 + 0.2, within(0.001));
  }

  /** Where both halves begin, along y of the world. */
  private static double line(TimberDeck deck) {
    return halves(deck).bays.get(0).field().frame().origin().y();
  }

  @Test
  void whereSomethingStandsAllAlongTheMiddleThereIsNoLine() {
    TimberDeck full = deck();
    for (double y = -1.6; y < 1.7; y += 0.3) {
      full.pipe("IfcPipeSegment", "p" + y, new Vec3(0.2, y, 0), new Vec3(0.2, y, 3), 0.1);
    }
    assertThat(Halves.of(full)).isEmpty();
  }

  @Test
  void onlyAFieldAtNoHouseStandsFree() {
    Field free = deck().field();
    assertThat(BothWays.standsFree(free, List.of(free))).isTrue();
    Field atHouse = TimberDeck.plain(5).field();
    assertThat(BothWays.standsFree(atHouse, List.of(atHouse))).isFalse();
    Field half = halves(deck()).bays.get(0).field();
    assertThat(BothWays.standsFree(half, List.of(half))).isFalse();
  }

  @Test
  void whatStandsOnOneSideLowersTheSeatOfBothSoThatTheCapsLieLevelOnBoth() {
    double y = 1.5;
    TimberDeck deck = deck();
    for (int i = 0; i + 1 < JOISTS; i++) {
      double x = i * 0.4 + W;
      deck.bar("IfcBeam", "low " + i, x, y - W / 2, Z + 0.02, (i + 1) * 0.4, y + W / 2, Z + D);
    }
    Layout layout = layOut(halves(deck), "formed-aluminium");
    double seat = layout.fields().get(0).seatHigh();
    assertThat(layout.fields().get(1).seatHigh()).isCloseTo(seat, within(1e-12));
    assertThat(seat)
        .isLessThan(layOut(halves(deck()), "formed-aluminium").fields().get(0).seatHigh());
    assertThat(layout.fields()).extracting(f -> f.bays().size()).containsExactly(5, 5);
  }
}
