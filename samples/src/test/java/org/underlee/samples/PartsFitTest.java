package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;

/** No part of ours stands in the framing, in what crosses it, or in another part. */
class PartsFitTest {
  static Stream<SampleDeck> decks() {
    return Stream.concat(
        SampleDecks.all().stream(),
        Stream.concat(
            Stream.of(SampleDecks.twoSpans(2400, 1800, 7), SampleDecks.plain(2438.4, 406.4, 5)),
            LongStream.rangeClosed(1, 25).mapToObj(SampleDecks::random)));
  }

  @ParameterizedTest
  @MethodSource("decks")
  void noPartStandsInAnythingElse(SampleDeck deck) {
    assertThat(PartsFit.meetings(design(deck))).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("decks")
  void everyBayIsServedOrNamedInAFindingAndEveryPanEndsOverTheGutter(SampleDeck deck) {
    assertThat(PartsFit.forgotten(design(deck))).isEmpty();
  }

  private static Design design(SampleDeck deck) {
    return DeckRun.design(
        DeckRun.survey(IfcEmitter.emit(deck, Mix.PLAIN), "deck.ifc"),
        Scope.OUTSIDE,
        KitReader.builtIn());
  }
}
