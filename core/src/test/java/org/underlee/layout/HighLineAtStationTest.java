package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.bay.FieldBays;
import org.underlee.bay.HighLinePlaces;
import org.underlee.drainage.DrainProof;
import org.underlee.framing.HighLine;
import org.underlee.framing.TimberDeck;
import org.underlee.layout.HighLineTest.Halves;
import org.underlee.units.Words;

/** A field falls both ways from a high line where the user wants it. */
class HighLineAtStationTest {
  private static final double RUN = 2 * HighLineTest.HALF;
  private static final double LEAST = 0.3;
  private static final double MARK = 0.001;
  private static final double ROOM = 0.2;

  /** Places all along the joists but where a side would have no run, seeded. */
  static DoubleStream stations() {
    return new Random(20).doubles(6, LEAST, RUN - LEAST);
  }

  private static Halves at(TimberDeck deck, double station) {
    return Halves.at(deck, station).orElseThrow();
  }

  @ParameterizedTest
  @MethodSource("stations")
  void eachSideRunsFromTheStationThatWasAskedForToItsEnd(double station) {
    List<FieldBays> halves = at(HighLineTest.deck(), station).bays();
    double[] runs = {RUN - station, station};
    for (int i = 0; i < runs.length; i++) {
      double run = runs[i];
      HighLine line = halves.get(i).field().highLine().orElseThrow();
      assertThat(line.station()).isEqualTo(station);
      assertThat(line.asked()).isTrue();
      assertThat(halves.get(i).bays())
          .hasSize(HighLineTest.JOISTS - 1)
          .allSatisfy(b -> assertThat(b.stretch().from()).isCloseTo(0, within(1e-9)))
          .allSatisfy(b -> assertThat(b.stretch().to()).isCloseTo(run, within(1e-9)));
    }
  }

  @ParameterizedTest
  @MethodSource("stations")
  void everyDropReachesTheOutletOfItsSideWhereverTheLineIs(double station) {
    for (String kit : List.of("formed-aluminium", "rigid-vinyl", "galvanised-steel")) {
      Halves halves = at(HighLineTest.deck(), station);
      Layout layout = HighLineTest.layOut(halves, kit);
      assertThat(layout.fields()).as(kit).extracting(f -> f.bays().size()).containsExactly(5, 5);
      DrainProof proof = HighLineTest.proof(halves, layout);
      assertThat(proof.leaks()).as(kit).isEmpty();
      assertThat(proof.dryFraction()).as(kit).isCloseTo(1, within(1e-9));
      assertThat(proof.outlets()).hasSize(2);
      double onward = proof.outlets().get(0).area();
      double all = onward + proof.outlets().get(1).area();
      assertThat(onward / all).as(kit).isCloseTo((RUN - station) / RUN, within(0.02));
    }
  }

  @ParameterizedTest
  @MethodSource("stations")
  void aDeckTurnedRoundGivesTheSameHalvesTurnedRound(double station) {
    // at 4.1 m a shallow block that lowers the seat, wherever the line is
    double y = 1.1;
    List<String> given = parts(at(shallow(y), station(station, y)), 0);
    List<String> turned = parts(at(shallow(-y), RUN - station(station, y)), 1);
    assertThat(given).isNotEmpty().isEqualTo(turned);
  }

  /** Clear of the blocks. */
  private static double station(double wanted, double y) {
    double block = HighLineTest.HALF + y;
    return Math.abs(wanted - block) < 2 * ROOM ? block - 2 * ROOM : wanted;
  }

  private static TimberDeck shallow(double y) {
    TimberDeck deck = HighLineTest.deck();
    double w = TimberDeck.W;
    for (int i = 0; i + 1 < HighLineTest.JOISTS; i++) {
      double top = TimberDeck.Z + TimberDeck.D;
      double x = i * 0.4;
      deck.bar("IfcBeam", "b" + i, x + w, y - w / 2, top - 0.09, x + 0.4, y + w / 2, top);
    }
    return deck;
  }

  /** Kinds and sizes of what is hung in the bays of one half, without order. */
  private static List<String> parts(Halves halves, int half) {
    Layout layout = HighLineTest.layOut(halves, "formed-aluminium");
    return layout.fields().get(half).parts().stream()
        .filter(p -> p.kind() == PartKind.PAN || p.kind() == PartKind.SIDE_RAIL)
        .map(p -> String.format("%s %.6f %.6f", p.kind(), p.length(), p.width()))
        .sorted()
        .toList();
  }

  @Test
  void whereSomethingStandsItIsToldWhereAndWhereTheLineCanBe() {
    TimberDeck deck = HighLineTest.blocked(HighLineTest.deck(), 1);
    HighLinePlaces places = places(deck);
    double row = HighLineTest.HALF + 1;
    assertThat(places.wrong(row)).isEmpty();
    String near = told(places, row - 0.1);
    assertThat(near)
        .isEqualTo(
            "in B1 something stands from 3981 mm to 4019 mm and the line must keep 200 mm off it");
    assertThat(told(places, row + 0.03))
        .contains("blocking stands there in a row")
        .contains("middle at 4000 mm");
    assertThat(Halves.at(deck, row - 0.1)).isEmpty();
    List<Double> offered = places.beside(row - 0.1);
    assertThat(offered).hasSize(2);
    assertThat(offered.get(0)).isCloseTo(row - TimberDeck.W / 2 - ROOM, within(MARK));
    assertThat(offered.get(1)).isCloseTo(row, within(MARK));
    assertThat(offered).allSatisfy(v -> assertThat(Halves.at(deck, v)).isPresent());
  }

  @Test
  void anEndThatIsTooNearIsToldWithTheRunThatEachSideNeeds() {
    HighLinePlaces places = places(HighLineTest.deck());
    for (double station : new double[] {0, LEAST - MARK, RUN - LEAST + MARK, RUN, 2 * RUN}) {
      assertThat(told(places, station))
          .isEqualTo(
              "its bays run from 0 mm to 6000 mm and each side needs a run of 300 mm or more");
      double offered = places.beside(station).get(0);
      assertThat(offered).isCloseTo(station < LEAST ? LEAST : RUN - LEAST, within(MARK));
      assertThat(places.wrong(offered)).isEmpty();
    }
    assertThat(places.wrong(LEAST)).isEmpty();
  }

  @Test
  void theMiddleOfARowOfBlockingIsMeantByWhatATapeShowsOfIt() {
    double row = 0.0173;
    Halves halves = at(HighLineTest.blocked(HighLineTest.deck(), row), Math.rint(3017.3) / 1000);
    assertThat(halves.bays().get(0).field().highLine().orElseThrow().station())
        .isCloseTo(HighLineTest.HALF + row, within(1e-9));
    assertThat(halves.bays())
        .allSatisfy(h -> assertThat(h.bays()).allSatisfy(b -> assertThat(b.high()).isPresent()));
  }

  @Test
  void sheetsAndMembranesFallBothWaysFromThereToo() {
    Halves halves = at(HighLineTest.deck(), 2);
    Stream.of("ribbed-sheet", "membrane-drape")
        .forEach(
            kit -> {
              Layout layout = HighLineTest.layOut(halves, kit);
              assertThat(layout.fields()).as(kit).hasSize(2);
              assertThat(HighLineTest.proof(halves, layout).dryFraction())
                  .as(kit)
                  .isGreaterThan(0.99);
            });
  }

  private static HighLinePlaces places(TimberDeck deck) {
    return new HighLinePlaces(deck.fieldBays().get(0));
  }

  private static String told(HighLinePlaces places, double station) {
    return places.wrong(station).map(Words::toString).orElseThrow();
  }
}
