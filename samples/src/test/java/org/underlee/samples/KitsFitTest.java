package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.writeback.Strip;

/** Every built-in kit, on the samples and on random decks. */
class KitsFitTest {
  private static final int RANDOM_DECKS = 10;

  static Stream<Arguments> designs() {
    List<SampleDeck> decks = new ArrayList<>(SampleDecks.all());
    LongStream.rangeClosed(1, RANDOM_DECKS).mapToObj(SampleDecks::random).forEach(decks::add);
    return KitReader.allBuiltIn().stream()
        .flatMap(kit -> decks.stream().map(deck -> Arguments.of(kit.id(), deck)));
  }

  @ParameterizedTest(name = "{0} on {1}")
  @MethodSource("designs")
  void everyKitFitsAndFallsAndIsWrittenTheSameTwiceAndStripped(String name, SampleDeck deck) {
    Kit kit = KitReader.named(name);
    byte[] original = IfcEmitter.emit(deck, Mix.PLAIN);
    Design design = design(original, kit);
    assertThat(PartsFit.meetings(design)).isEmpty();
    assertThat(PartsFit.forgotten(design)).isEmpty();
    assertThat(design.layout().parts())
        .filteredOn(p -> p.kind().catchesWater() && p.kind() != PartKind.COLLAR_PIECE)
        .allSatisfy(p -> assertThat(fall(p)).isGreaterThanOrEqualTo(kit.fall() - 1e-12));
    byte[] drained = design.written().bytes();
    assertThat(design(original, kit).written().bytes()).isEqualTo(drained);
    assertThat(Strip.original(drained).map(Strip.Stripped::bytes).orElse(drained))
        .isEqualTo(original);
  }

  private static double fall(Part part) {
    return part.fall().orElseThrow();
  }

  private static Design design(byte[] model, Kit kit) {
    return DeckRun.design(
        DeckRun.survey(model, "deck.ifc"), Scope.OUTSIDE.with(Wishes.NONE.withBoardsOff()), kit);
  }
}
