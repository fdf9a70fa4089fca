package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
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
  private static final double HALF = 3;
  private static final int JOISTS = 6;
  private static final double RIGHT = (JOISTS - 1) * 0.4 + W;

  private static TimberDeck deck() {
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

  private static TimberDeck blocked(TimberDeck deck, double... stations) {
    for (int i = 0; i + 1 < JOISTS; i++) {
      double y = stations[i % stations.length];
      String name = "block " + i;
      double x = i * 0.4 + W;
      deck.bar("IfcBeam", name, x, y - W / 2, Z, (i + 1) * 0.4, y + W / 2, Z + D);
    }
    return deck;
  }

  private record Halves(Framing framing, List<FieldBays> bays) {
    static Optional<Halves> of(TimberDeck timber) {
      Framing whole = timber.frame();
      FieldBays given = timber.fieldBays().get(0);
      return BothWays.of(given, "deck-1/field-2")
          .map(
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

  private static Kit kit(String id) {
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

  @ParameterizedTest
  @ValueSource(
      strings = {
        "formed-aluminium",
        "rigid-vinyl",
        "galvanised-steel",
        "ribbed-sheet",
        "membrane-drape"
      })
  void everyDropOnADeckThatFallsBothWaysReachesAnOutlet(String id) {
    for (TimberDeck deck : List.of(deck(), blocked(deck(), 0), blocked(deck(), -0.02, 0.02))) {
      Halves halves = halves(deck);
      Kit kit = kit(id);
      Layout layout = halves.layOut(kit, Wishes.NONE.withBoardsOff());
      if (layout.fields().isEmpty()) {
        System.out.println(id + " none: " + layout.findings());
        continue;
      }
      System.out.println(
          id
              + " "
              + layout.fields().stream().map(f -> f.bays() + "@" + f.seatHigh()).toList()
              + layout.findings().stream().map(f -> f.rule().id() + ": " + f.message()).toList());
      DrainProof proof = WaterProver.prove(DrainCases.of(halves.bays, layout));
      System.out.println(
          proof.dryFraction()
              + " "
              + proof.rain()
              + " "
              + proof.outlets()
              + proof.flat()
              + proof.ponds()
              + proof.leaks().stream()
                  .map(l -> l.cause() + " " + l.area() + l.at() + l.parts())
                  .toList());
    }
  }
}
