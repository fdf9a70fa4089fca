package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.ids.IdsCheck;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.SchemaChecked;
import org.underlee.run.Survey;
import org.underlee.run.SurveyRequest;
import org.underlee.schema.Schema;
import org.underlee.step.StepFile;
import org.underlee.takeoff.Buying;
import org.underlee.takeoff.ListReader;

/** What design writes, by the standard's own schemas with all the rules that they state. */
class OutputsFollowTheSchemaTest {
  private static final Map<Mix.Schema, Schema> SCHEMAS = new EnumMap<>(Mix.Schema.class);

  static Schema schema(Mix.Schema of) {
    return SCHEMAS.computeIfAbsent(of, OutputsFollowTheSchemaTest::read);
  }

  private static Schema read(Mix.Schema of) {
    String file =
        switch (of) {
          case IFC2X3 -> "IFC2X3_TC1.exp";
          case IFC4 -> "IFC4_ADD2.exp";
          case IFC4X3_ADD2 -> "IFC4X3_ADD2.exp";
        };
    try (InputStream in = SampleDeck.class.getResourceAsStream("/schema/" + file)) {
      return Schema.parse(new String(in.readAllBytes(), StandardCharsets.ISO_8859_1), file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Stream<Arguments> samples() {
    List<Arguments> all = new ArrayList<>();
    for (SampleDeck sample : SampleDecks.all()) {
      for (Mix.Schema schema : Mix.Schema.values()) {
        List<Kit> kits =
            schema == Mix.Schema.IFC4 ? KitReader.allBuiltIn() : List.of(KitReader.builtIn());
        for (Kit kit : kits) {
          all.add(Arguments.of(Named.of(sample.name(), sample), schema, Named.of(kit.id(), kit)));
        }
      }
    }
    return all.stream();
  }

  @ParameterizedTest(name = "{0} {1} {2}")
  @MethodSource("samples")
  void everyInstanceThatIsWrittenForASampleFollowsTheSchema(
      SampleDeck sample, Mix.Schema schema, Kit kit) {
    requireClean(sample, sample.ownMix().with(schema), kit);
  }

  @ParameterizedTest
  @EnumSource(Mix.Schema.class)
  void aFieldThatFallsBothWaysIsWrittenByTheSchemaAndAsOurIdsFilePromises(Mix.Schema schema) {
    HardCase free =
        HardCases.all().stream().filter(h -> !h.bothWays().isEmpty()).findFirst().orElseThrow();
    byte[] model = IfcEmitter.emit(free.deck(), Mix.PLAIN.with(schema));
    for (String kit : List.of("formed-aluminium", "ribbed-sheet")) {
      Survey survey =
          DeckRun.survey(model, "deck.ifc", SurveyRequest.PLAIN.bothWays(free.bothWays()));
      Design design = DeckRun.design(survey, Scope.OUTSIDE, KitReader.named(kit));
      assertThat(design.layout().fields()).hasSize(2);
      StepFile written = StepFile.of(design.written().bytes(), "deck.ifc");
      assertThat(SchemaChecked.of(written, schema(schema), true).report().findings()).isEmpty();
      // the IDS file asks for pans
      assertThat(IdsCheck.byOwn(schema(schema), written).passed())
          .isEqualTo(kit.equals("formed-aluminium"));
    }
  }

  /** The second currency is one that the oldest schema has no name for. */
  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "IFC2X3,USD",
    "IFC2X3,RON",
    "IFC4,USD",
    "IFC4,RON",
    "IFC4X3_ADD2,USD",
    "IFC4X3_ADD2,RON"
  })
  void pricesFollowTheSchemaToo(Mix.Schema schema, String currency) {
    String prices =
        "item,unit,length,pack,price,currency\n"
            + "side-rail,length,12 ft,,18.50,CUR\nscrew,box,,100,12.5,CUR\n";
    Buying buying =
        new Buying(
            Optional.of(
                new ListReader(Set.of("side-rail", "screw"))
                    .prices(prices.replace("CUR", currency), "prices.csv")),
            List.of());
    SampleDeck deck = PineDeck.sample();
    Survey survey = DeckRun.survey(IfcEmitter.emit(deck, deck.ownMix().with(schema)), "deck.ifc");
    Storm storm = RainData.builtIn().service(RainData.ANYWHERE);
    Design design =
        DeckRun.design(
            survey,
            Scope.OUTSIDE,
            DeckRun.layOut(survey, Scope.OUTSIDE, KitReader.builtIn(), storm),
            storm,
            buying);
    String written = new String(design.written().bytes(), StandardCharsets.ISO_8859_1);
    assertThat(written).contains("IFCCOSTVALUE('price of one box','12.5 " + currency + "'");
    assertThat(written).contains(".ESTIMATE.").contains("no price known");
    SchemaChecked checked =
        SchemaChecked.of(StepFile.of(design.written().bytes(), deck.name()), schema(schema), true);
    assertThat(checked.report().findings()).isEmpty();
  }

  private static void requireClean(SampleDeck deck, Mix mix, Kit kit) {
    assumeTrue(
        isLaidOutClean(deck, mix, kit),
        () -> "skipped: nothing of " + kit.id() + " fits into " + deck.name());
  }

  /** Whether there was something to check. */
  private static boolean isLaidOutClean(SampleDeck deck, Mix mix, Kit kit) {
    Design design = Priced.design(deck, mix, kit);
    if (design.layout().parts().isEmpty()) {
      return false;
    }
    byte[] drained = design.written().bytes();
    SchemaChecked checked =
        SchemaChecked.of(StepFile.of(drained, deck.name()), schema(mix.schema()), true);
    assertThat(checked.report().instances()).as("%s %s", deck.name(), mix).isPositive();
    assertThat(checked.report().findings()).as("%s %s", deck.name(), mix).isEmpty();
    return true;
  }
}
