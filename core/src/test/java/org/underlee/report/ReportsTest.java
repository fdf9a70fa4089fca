package org.underlee.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TimeZone;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.kit.KitReader;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.Survey;
import org.underlee.takeoff.Order;
import org.underlee.takeoff.Stick;
import org.underlee.takeoff.Takeoff;
import org.underlee.units.Lengths.UnitSystem;

class ReportsTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  private static Design design;

  @BeforeAll
  static void designTheSample() {
    design = designOf("pine-deck");
  }

  private static Survey surveyOf(String sample) {
    return DeckRun.survey(ROOT.resolve("samples/" + sample + "/" + sample + ".ifc"));
  }

  private static Design designOf(String sample) {
    return DeckRun.design(surveyOf(sample), Scope.OUTSIDE, KitReader.builtIn());
  }

  @Test
  void theSurveyHasEveryKeyOfTheContractWithItsType() throws IOException {
    Path example =
        Path.of(System.getProperty("underlee.corpus", "."), "contract/survey.example.json");
    assumeTrue(Files.isRegularFile(example), "skipped: the contract's example is not there");
    Map<String, Set<String>> wanted = new HashMap<>();
    shape(JSON.readTree(example.toFile()), "", wanted);
    Map<String, Set<String>> there = new HashMap<>();
    for (String sample : List.of("pine-deck", "harbour-balcony", "hillside-terrace")) {
      shape(JSON.readTree(SurveyJson.write(surveyOf(sample))), "", there);
    }
    // no sample has anything unmeasured, or an opening
    wanted.keySet().removeIf(k -> k.matches("/notMeasured/.*|.*/(headers|trimmers)/\\[]"));
    // "GlobalId of the storey, or null"
    wanted.get("/decks/[]/storey").add("NULL");
    wanted.forEach(
        (path, types) -> {
          assertThat(there).containsKey(path);
          assertThat(types).as(path).containsAll(there.get(path));
        });
    assertThat(wanted).hasSizeGreaterThan(50);
  }

  private static void shape(JsonNode node, String path, Map<String, Set<String>> types) {
    types.computeIfAbsent(path, p -> new LinkedHashSet<>()).add(node.getNodeType().name());
    if (node.isObject()) {
      node.fields().forEachRemaining(f -> shape(f.getValue(), path + "/" + f.getKey(), types));
    }
    node.elements()
        .forEachRemaining(
            e -> {
              if (node.isArray()) {
                shape(e, path + "/[]", types);
              }
            });
  }

  @Test
  void theDesignNamesEveryPartWithWhatTheContractAsksFor() throws IOException {
    JsonNode root = JSON.readTree(DesignJson.write(design));
    assertThat(root.get("schema").asText()).isEqualTo("underlee/design/1");
    assertThat(root.get("input").get("sha256").asText()).matches("[0-9a-f]{64}");
    assertThat(root.get("parts")).hasSameSizeAs(design.layout().parts());
    Set<String> ids = new LinkedHashSet<>();
    for (JsonNode part : root.get("parts")) {
      assertThat(part.get("id").asText()).startsWith(part.get("field").asText() + "/");
      assertThat(part.get("kind").asText()).matches("[a-z]+(-[a-z]+)*");
      assertThat(part.get("globalId").asText()).matches("[0-3][0-9A-Za-z_$]{21}");
      assertThat(part.has("lengthMm") != part.has("count")).isTrue();
      ids.add(part.get("id").asText());
    }
    assertThat(ids).hasSameSizeAs(design.layout().parts());
    assertThat(root.get("findings").isArray()).isTrue();
    assertThat(root.get("notMeasured").isArray()).isTrue();
  }

  @Test
  void theTakeoffCountsEachPartOfTheDesignOnce() throws IOException {
    JsonNode root = JSON.readTree(TakeoffJson.write(design));
    assertThat(root.get("schema").asText()).isEqualTo("underlee/takeoff/1");
    List<String> counted = new ArrayList<>();
    root.get("lines").forEach(l -> l.get("parts").forEach(p -> counted.add(p.asText())));
    assertThat(counted)
        .containsExactlyInAnyOrderElementsOf(
            design.layout().parts().stream().map(Part::id).toList());
    for (JsonNode stock : root.get("stock")) {
      double used = 0;
      for (JsonNode length : stock.get("pattern")) {
        used += length.asDouble();
      }
      assertThat(used).isLessThanOrEqualTo(stock.get("stockLengthMm").asDouble() + 0.01);
    }
    root.get("bought")
        .fields()
        .forEachRemaining(
            b -> {
              assertThat(b.getValue().get("lengthMm").asDouble())
                  .isCloseTo(boughtMm(root, b.getKey()), within(0.01));
              assertThat(b.getValue().get("provenLeast").asBoolean()).isTrue();
            });
    for (String key : List.of("item", "lengthMm", "count", "bays")) {
      assertThat(root.get("cuts")).allMatch(c -> c.has(key));
    }
  }

  private static double boughtMm(JsonNode root, String item) {
    double bought = 0;
    for (JsonNode stock : root.get("stock")) {
      bought +=
          stock.get("item").asText().equals(item)
              ? stock.get("pieces").asInt() * stock.get("stockLengthMm").asDouble()
              : 0;
    }
    return bought;
  }

  /** RFC 4180: CR LF, and quotes around what holds a comma, a quote or a line end. */
  @Test
  void cellsOfTheTableAreQuotedWhereTheyMustBe() {
    Takeoff takeoff =
        new Takeoff(
            List.of(
                new Takeoff.Line("a", "plain", "m", 1.25, List.of()),
                new Takeoff.Line("b", "2\" tape, wide", "m", 2, List.of()),
                new Takeoff.Line("c", "two\nlines", "piece", 3, List.of())),
            List.of(
                new Takeoff.Cut(
                    "a", PartKind.PAN, 1.2345, OptionalDouble.of(0.4), 2, List.of("B1", "B2"))),
            List.of(
                new Takeoff.Stock("a", 3.048, 1, List.of(block(0.4), block(0.3)), 0.579, false),
                new Takeoff.Stock(
                    "a",
                    2,
                    1,
                    List.of(
                        new Stick.Block(
                            List.of(new Stick.Piece(1, 0.3), new Stick.Piece(1.5, 0.2)))),
                    0.5,
                    true)),
            Map.of(),
            Map.of(),
            new Order(
                List.of(
                    new Order.Row(
                        "c",
                        "screws",
                        "box",
                        100,
                        OptionalDouble.empty(),
                        150,
                        15,
                        2,
                        "",
                        Optional.of(new BigDecimal("12.50")))),
                List.of(),
                Optional.of("USD")));
    assertThat(TakeoffCsv.write(takeoff).split("\r\n"))
        .containsExactly(
            "row,item,description,quantity,unit,length_mm,sheet_width_mm,pattern_mm,offcut_mm,where,"
                + "needed,spare,pack,price,cost,currency,global_ids",
            "count,a,plain,1.25,m,,,,,,,,,,,,",
            "count,b,\"2\"\" tape, wide\",2,m,,,,,,,,,,,,",
            "count,c,\"two\nlines\",3,piece,,,,,,,,,,,,",
            "cut,a,pan,2,piece,1234.5,400,,,B1 B2,,,,,,,",
            "buy,a,,1,stock length,3048,,1234.5 + 1234.5,579,,,,,,,,",
            "on-hand,a,,1,stock length,2000,,1500 (1000 x 300 | 200),500,,,,,,,,",
            "order,c,screws,2,box,,,,,,150,15,100,12.50,25.00,USD,");
    assertThat(TakeoffCsv.write(takeoff)).endsWith("\r\n");
  }

  private static Stick.Block block(double width) {
    return new Stick.Block(List.of(new Stick.Piece(1.2345, width)));
  }

  private static List<String> everyText(Design own) {
    return Stream.of(
            SurveyJson.write(own.survey()),
            DesignJson.write(own),
            TakeoffJson.write(own),
            TakeoffCsv.write(own.takeoff()),
            SurveyText.write(own.survey(), UnitSystem.METRIC),
            SurveyText.write(own.survey(), UnitSystem.IMPERIAL),
            DesignText.write(own, UnitSystem.METRIC),
            DesignText.write(own, UnitSystem.IMPERIAL))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"de-DE", "tr-TR", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva"})
  void neitherLocaleNorTimeZoneOfTheMachinePlayAPart(String tag) {
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag(tag));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
      Design there = designOf("pine-deck");
      assertThat(everyText(there)).isEqualTo(everyText(design));
      assertThat(there.written().bytes()).isEqualTo(design.written().bytes());
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void textForPeopleNamesEachBayAndWhatToBuyAndTheCautions() {
    String survey = SurveyText.write(design.survey(), UnitSystem.IMPERIAL);
    design.survey().bays().get(0).bays().forEach(b -> assertThat(survey).contains("  " + b.id()));
    String text = DesignText.write(design, UnitSystem.METRIC);
    assertThat(text).contains("To buy", "To cut", "mm", "local code").doesNotContain("\r");
    design.takeoff().lines().forEach(l -> assertThat(text).contains(l.description()));
  }

  @Test
  void numbersAreRoundedOnceWithoutMinusZeroOrTrailingZeros() {
    assertThat(Json.mm(0.0123456)).hasToString("12.346");
    assertThat(Json.mm(-0.0000000001)).hasToString("0");
    assertThat(Json.mm(1.2)).hasToString("1200");
    assertThat(Json.rounded(1.0 / 96, 9)).hasToString("0.010416667");
  }
}
