package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Deck;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths.UnitSystem;

/** Things are called on the screen what they are called on their pieces. */
class NamesTest {
  private static final Path SAMPLE =
      Path.of(
          System.getProperty("underlee.root", "../.."),
          "samples/hillside-terrace/hillside-terrace.ifc");

  private static Result all;
  private static Result second;
  private static Offer offer;

  @BeforeAll
  static void layOut() throws InterruptedException {
    Screen screen = new Screen();
    Session session = new Session(screen);
    session.open(SAMPLE, Decisions.FIRST);
    screen.runUntilWhole(session);
    all = session.result().get().orElseThrow();
    session.decide("deck", d -> d.withDeck(Optional.of("deck-2")));
    screen.runUntilWhole(session);
    second = session.result().get().orElseThrow();
    offer = new Offer(session);
    session.close();
  }

  @Test
  void aFieldIsCalledInTheOutlineAsOnItsPieces() {
    for (Result result : List.of(all, second)) {
      List<Outline> fields =
          Outline.of(result, UnitSystem.METRIC).stream().flatMap(d -> d.inside().stream()).toList();
      for (FieldLayout field : result.layout().fields()) {
        assertThat(fields)
            .filteredOn(o -> o.item().equals(new Item.OfField(field.field())))
            .extracting(Outline::name)
            .containsExactly(field.mark());
      }
      assertThat(fields).extracting(Outline::name).allMatch(n -> n.matches("F\\d+|Field \\d+"));
    }
    assertThat(Names.of(second).field("deck-1/field-2")).as("out of scope").isEqualTo("Field 2");
  }

  @Test
  void theInspectorSaysNoIdButWhereItSaysThatItIsOne() {
    for (FieldBays field : all.survey().bays()) {
      Item.OfField of = new Item.OfField(field.field().id());
      check(Inspection.of(of, all, UnitSystem.METRIC).orElseThrow());
      for (Bay bay : field.bays()) {
        check(
            Inspection.of(new Item.OfBay(of.id(), bay.id()), all, UnitSystem.METRIC).orElseThrow());
      }
    }
    for (Deck deck : all.survey().framing().decks()) {
      check(Inspection.of(new Item.OfDeck(deck.id()), all, UnitSystem.METRIC).orElseThrow());
    }
    all.layout().parts().stream()
        .map(p -> Inspection.of(new Item.OfPart(p.id()), all, UnitSystem.METRIC).orElseThrow())
        .forEach(NamesTest::check);
  }

  private static void check(Inspection said) {
    Stream<String> words =
        Stream.concat(
            Stream.of(said.name(), said.kind()),
            said.rows().stream()
                .filter(r -> !r.name().equals("Id in files"))
                .map(Inspection.Row::value));
    assertThat(words).noneMatch(w -> w.matches(".*(deck-\\d|field-\\d).*"));
  }

  @Test
  void textsNamePiecesFieldsAndDecksByTheirMarks() {
    FieldLayout field = all.layout().fields().get(0);
    Part outlet =
        field.parts().stream().filter(p -> p.kind() == PartKind.OUTLET).findFirst().orElseThrow();
    Names names = Names.of(all);
    assertThat(names.inText(outlet.id() + " blocked: water stands."))
        .isEqualTo(outlet.label() + " blocked: water stands.");
    assertThat(names.inText("a pan of " + field.field() + " B3 on " + field.deck() + "."))
        .isEqualTo("a pan of " + field.mark() + " B3 on " + Names.deck(field.deck()) + ".");
    assertThat(names.inText("deck-9/field-9, B2")).isEqualTo("deck-9/field-9, B2");
    assertThat(Names.NONE.inText(outlet.id())).isEqualTo(outlet.id());
  }

  @Test
  void theUndersideOfBlockingSaysFromWhereItIsMeasured() {
    for (FieldBays field : all.survey().bays()) {
      for (Bay bay : field.bays()) {
        Inspection said =
            Inspection.of(new Item.OfBay(field.field().id(), bay.id()), all, UnitSystem.METRIC)
                .orElseThrow();
        List<Inspection.Row> rows =
            said.rows().stream().filter(r -> r.name().startsWith("Blocking at")).toList();
        assertThat(rows).hasSameSizeAs(bay.blocking());
        assertThat(rows).allMatch(r -> r.value().endsWith("the joist bottom"));
      }
    }
    assertThat(all.survey().bays().stream().flatMap(f -> f.bays().stream()))
        .anyMatch(b -> b.blocking().stream().map(Block::bottom).findAny().isPresent());
  }

  @Test
  void whatThereIsToChooseFromIsSaidInWordsAndRainWithItsRate() {
    assertThat(offer.rainWords("anywhere", UnitSystem.IMPERIAL)).isEqualTo("anywhere: 8.0 in/h");
    assertThat(offer.rainWords("3in/h", UnitSystem.IMPERIAL)).isEqualTo("3in/h");
    assertThat(offer.rainTaken(UnitSystem.IMPERIAL)).contains("8.0 in/h", "10-year 5-minute");
    assertThat(offer.lowEndWords("beam-1")).isEqualTo("beam 1");
    assertThat(offer.lowEndWords("joist-end")).isEqualTo("joist ends");
    assertThat(offer.deckWords("deck-2")).isEqualTo("Deck 2");
    KitReader.allBuiltIn().forEach(k -> assertThat(offer.kitWords(k.id())).isEqualTo(k.name()));
  }
}
