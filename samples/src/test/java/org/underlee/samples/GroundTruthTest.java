package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The truth, told from the description, against the corners of the members that were built. */
class GroundTruthTest {
  private static final double EXACT = 1e-5; // mm; the noise of turned coordinates at 100 km

  static Stream<SampleDeck> samples() {
    return Stream.of(
            SampleDecks.all().stream(),
            Stream.of(SampleDecks.twoSpans(2400, 1200, 5)),
            LongStream.range(0, 60).mapToObj(SampleDecks::random))
        .flatMap(decks -> decks);
  }

  @ParameterizedTest(name = "{index}")
  @MethodSource("samples")
  void everyBayIsWhatItsMembersLeaveFree(SampleDeck sample) {
    for (Mix mix : List.of(sample.ownMix(), Mix.random(sample.members().size()))) {
      Map<String, Member> members =
          sample.members().stream()
              .collect(Collectors.toMap(m -> sample.globalId(m.key()), Function.identity()));
      for (GroundTruth.Deck deck : sample.truth(mix).decks()) {
        deck.fields().forEach(f -> new Measured(sample, mix, members, deck, f).check());
      }
    }
  }

  /** A field measured in the world: u to the right of the fall, v down the fall. */
  private record Measured(
      SampleDeck sample,
      Mix mix,
      Map<String, Member> members,
      GroundTruth.Deck deck,
      GroundTruth.Field field) {

    void check() {
      List<String> high = field.ledgers().isEmpty() ? field.beams() : field.ledgers();
      double ledger = all(high, this::v).max(Comparator.naturalOrder()).orElseThrow();
      assertThat(all(joists(), this::v).min(Comparator.naturalOrder()).orElseThrow())
          .isCloseTo(ledger, within(EXACT));
      for (GroundTruth.Bay bay : field.bays()) {
        double end = ledger + bay.lengthMm();
        List<String> bounds = field.rims().isEmpty() ? field.beams() : field.rims();
        assertThat(all(bounds, this::v).min(Comparator.naturalOrder()).orElseThrow())
            .isCloseTo(end, within(EXACT));
        assertThat(clear(bay, ledger)).isCloseTo(bay.clearWidthHighMm(), within(EXACT));
        assertThat(clear(bay, end)).isCloseTo(bay.clearWidthLowMm(), within(EXACT));
        bay.blocking().forEach(b -> checkBlock(bay, b, ledger));
        bay.crossings().forEach(c -> checkCrossing(bay, c, ledger));
      }
      assertThat(all(joists(), Xyz::z).max(Comparator.naturalOrder()).orElseThrow())
          .isCloseTo(deck.topMm(), within(EXACT));
      field.joistLines().forEach(this::checkLine);
    }

    private void checkLine(GroundTruth.JoistLine line) {
      Solid ply = members.get(line.members().get(0)).solid();
      assertThat(line.members()).hasSize(line.plies());
      assertThat(line.widthMm()).isCloseTo(line.plies() * ply.section().width(), within(EXACT));
      assertThat(line.depthMm()).isCloseTo(ply.section().depth(), within(EXACT));
      List<Double> middles =
          line.members().stream()
              .map(m -> all(List.of(m), this::u).mapToDouble(u -> u).average().orElseThrow())
              .toList();
      assertThat(middles).isSorted();
    }

    private void checkBlock(GroundTruth.Bay bay, GroundTruth.Blocking block, double ledger) {
      List<String> one = List.of(block.member());
      double near = all(one, this::v).min(Comparator.naturalOrder()).orElseThrow();
      double far = all(one, this::v).max(Comparator.naturalOrder()).orElseThrow();
      assertThat((near + far) / 2 - ledger).isCloseTo(block.atMm(), within(EXACT));
      assertThat(far - near).isCloseTo(block.thicknessMm(), within(EXACT));
      assertThat(low(one) - low(line(bay, 0).members()))
          .isCloseTo(block.bottomAboveJoistBottomMm(), within(EXACT));
      for (double v : new double[] {near, far}) {
        assertThat(face(one, v, true))
            .isCloseTo(face(line(bay, 0).members(), v, false), within(EXACT));
        assertThat(face(one, v, false))
            .isCloseTo(face(line(bay, 1).members(), v, true), within(EXACT));
      }
    }

    private void checkCrossing(GroundTruth.Bay bay, GroundTruth.Crossing crossing, double ledger) {
      Solid pipe = members.get(crossing.element()).solid().in(sample.world(mix));
      Xyz middle = pipe.frame().point(new Xyz(pipe.length() / 2, 0, 0));
      double station = v(middle) - ledger;
      assertThat(station).isCloseTo(crossing.atMm(), within(EXACT));
      assertThat(crossing.sizeMm()).isCloseTo(pipe.section().width(), within(EXACT));
      double first = face(line(bay, 0).members(), ledger + station, false);
      double second = face(line(bay, 1).members(), ledger + station, true);
      double across = "across".equals(crossing.way()) ? (first + second) / 2 : u(middle);
      assertThat(across - first).isCloseTo(crossing.acrossMm(), within(EXACT));
      assertThat(across).isBetween(first, second);
      Xyz axis = pipe.frame().x();
      assertThat(
              Math.abs(
                  switch (crossing.way()) {
                    case "through" -> axis.z();
                    case "along" -> v(axis);
                    default -> u(axis);
                  }))
          .isCloseTo(1, within(1e-9));
    }

    private double clear(GroundTruth.Bay bay, double v) {
      return face(line(bay, 1).members(), v, true) - face(line(bay, 0).members(), v, false);
    }

    private GroundTruth.JoistLine line(GroundTruth.Bay bay, int side) {
      return field.joistLines().stream()
          .filter(l -> l.id().equals(bay.between().get(side)))
          .findFirst()
          .orElseThrow();
    }

    /** Where the outermost vertical face of {@code ids} is at {@code v}: least or greatest u. */
    private double face(List<String> ids, double v, boolean least) {
      Stream<Double> us = ids.stream().flatMap(id -> edges(id, v));
      return us.reduce((a, b) -> least ? Math.min(a, b) : Math.max(a, b)).orElseThrow();
    }

    /** u of every edge of the member that reaches {@code v}. */
    private Stream<Double> edges(String id, double v) {
      Solid solid = members.get(id).solid().in(sample.world(mix));
      List<Xyz> corners = solid.corners().stream().map(solid.frame()::point).toList();
      return corners.stream()
          .flatMap(a -> corners.stream().filter(b -> v(b) > v(a) + EXACT).map(b -> List.of(a, b)))
          .filter(e -> v(e.get(0)) <= v + EXACT && v(e.get(1)) >= v - EXACT)
          .map(e -> at(e.get(0), e.get(1), v));
    }

    private double at(Xyz a, Xyz b, double v) {
      return u(a) + (u(b) - u(a)) * (v - v(a)) / (v(b) - v(a));
    }

    private double low(List<String> ids) {
      return all(ids, Xyz::z).min(Comparator.naturalOrder()).orElseThrow();
    }

    private List<String> joists() {
      return field.joistLines().stream().flatMap(l -> l.members().stream()).toList();
    }

    private Stream<Double> all(List<String> ids, ToDoubleFunction<Xyz> what) {
      return ids.stream()
          .map(id -> members.get(id).solid().in(sample.world(mix)))
          .flatMap(s -> s.corners().stream().map(s.frame()::point))
          .map(what::applyAsDouble);
    }

    private double v(Xyz p) {
      return p.x() * field.fallDirection().get(0) + p.y() * field.fallDirection().get(1);
    }

    /** v × up. */
    private double u(Xyz p) {
      return p.x() * field.fallDirection().get(1) - p.y() * field.fallDirection().get(0);
    }
  }

  @Test
  void aPlainDeckHasTheClearRunAskedFor() {
    SampleDeck deck = SampleDecks.plain(2438.4, 406.4, 4); // 8 ft; 16 in on centre
    GroundTruth.Field field = deck.truth(Mix.PLAIN).decks().get(0).fields().get(0);
    assertThat(field.bays()).extracting(GroundTruth.Bay::lengthMm).containsOnly(2438.4);
    assertThat(field.bays()).extracting(GroundTruth.Bay::clearWidthHighMm).containsOnly(368.3);
    assertThat(field.bays()).allMatch(b -> b.blocking().isEmpty() && b.crossings().isEmpty());
  }

  @Test
  void theFallTurnsWithTheModelAndTheTopRisesWithIt() {
    SampleDeck deck = SampleDecks.plain(2438.4, 406.4, 4);
    Mix turned = Mix.PLAIN.placed(90, new Xyz(0, 0, 12), Mix.Where.SITE, Mix.Nesting.ELEMENT);
    GroundTruth.Deck truth = deck.truth(turned).decks().get(0);
    assertThat(truth.fields().get(0).fallDirection()).containsExactly(-1.0, 0.0);
    assertThat(truth.topMm()).isEqualTo(15_000);
  }

  @Test
  void membersThatCarryTheDeckDoNotRunThroughEachOther() {
    samples()
        .forEach(
            sample -> {
              List<Member> framing =
                  sample.members().stream().filter(m -> m.role().isFraming()).toList();
              for (int i = 0; i < framing.size(); i++) {
                for (Member other : framing.subList(i + 1, framing.size())) {
                  assertThat(Overlap.of(framing.get(i).solid(), other.solid()))
                      .as("%s: %s and %s", sample.name(), framing.get(i).key(), other.key())
                      .isLessThan(0.01); // mm
                }
              }
            });
  }
}
