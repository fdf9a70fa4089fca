package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.drainage.flow.RainData;
import org.underlee.finding.Finding;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;
import org.underlee.samples.HardCases;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.MirroredDeck;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDeck;
import org.underlee.samples.SampleDecks;

/**
 * The layout of a deck seen in a mirror is the layout seen in a mirror: every part with its sizes
 * and counts, every finding. More decks than the usual run's: {@code -Dunderlee.decks=150}.
 */
class MirroredLayoutTest {
  private static final int DECKS = 12;

  private static final List<String> KITS =
      List.of("formed-aluminium", "membrane-drape", "ribbed-sheet");

  private static final Pattern NAMES = Pattern.compile("(#\\d+|\\b[BJ]\\d+\\b|\\b[\\w$]{22}\\b)");

  static Stream<Arguments> layouts() {
    List<SampleDeck> decks = new ArrayList<>(SampleDecks.all());
    HardCases.all().forEach(h -> decks.add(h.deck()));
    LongStream.rangeClosed(1, Integer.getInteger("underlee.decks", DECKS))
        .forEach(seed -> decks.add(SampleDecks.random(seed)));
    return decks.stream().flatMap(d -> KITS.stream().map(kit -> Arguments.of(d.name(), d, kit)));
  }

  @ParameterizedTest(name = "{0}, {2}")
  @MethodSource("layouts")
  void theMirroredDeckHasTheSamePartsAndFindings(String deckName, SampleDeck deck, String name) {
    Kit kit = KitReader.named(name);
    Layout here = layOut(deck, kit);
    Layout there = layOut(MirroredDeck.of(deck), kit);
    assertThat(parts(there)).as(deckName).containsExactlyInAnyOrderElementsOf(parts(here));
    assertThat(findings(there)).containsExactlyInAnyOrderElementsOf(findings(here));
  }

  private static Layout layOut(SampleDeck deck, Kit kit) {
    Survey survey = DeckRun.survey(IfcEmitter.emit(deck, Mix.PLAIN), "deck.ifc");
    Scope scope = Scope.OUTSIDE.with(Wishes.NONE.withBoardsOff());
    return DeckRun.layOut(survey, scope, kit, RainData.builtIn().service(RainData.ANYWHERE));
  }

  /** Kind, sizes to a hundredth of a millimetre, count, cuts; without names and places. */
  private static List<String> parts(Layout layout) {
    List<String> parts = new ArrayList<>();
    for (Part p : layout.parts()) {
      parts.add(
          String.format(
              Locale.ROOT,
              "%s %.5f x %.5f, %d, %s, of %d bodies",
              p.kind(),
              p.length(),
              p.width(),
              p.count(),
              p.fall(),
              p.bodies().size()));
    }
    return parts.stream().sorted().toList();
  }

  private static List<String> findings(Layout layout) {
    return layout.findings().stream().map(MirroredLayoutTest::told).sorted().toList();
  }

  /** Joists and bays are numbered from one side: their names are taken out. */
  private static String told(Finding finding) {
    return finding.rule().id() + ": " + NAMES.matcher(finding.message()).replaceAll("*");
  }
}
