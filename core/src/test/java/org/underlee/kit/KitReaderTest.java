package org.underlee.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.finding.InputException;

class KitReaderTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  static ObjectNode builtInText() throws IOException {
    try (InputStream in = KitReader.class.getResourceAsStream("formed-aluminium.json")) {
      return (ObjectNode) JSON.readTree(in);
    }
  }

  @Test
  void theBuiltInKitHasEveryValueAndItemEachWithItsSource() {
    Kit kit = KitReader.builtIn();
    assertThat(kit.id()).isEqualTo("formed-aluminium");
    assertThat(kit.values().keySet()).containsExactlyInAnyOrder(PanValue.values());
    assertThat(kit.values().values()).noneMatch(v -> v.source().isBlank());
    assertThat(kit.stock()).extracting(StockItem::id).containsExactlyElementsOf(Items.ALL);
    assertThat(kit.stock()).noneMatch(s -> s.source().isBlank());
    assertThat(kit.materials()).noneMatch(m -> m.source().isBlank());
    assertThat(kit.stock()).allMatch(s -> kit.materialOf(s).density() > 0);
    assertThat(KitReader.named("formed-aluminium")).isEqualTo(kit);
  }

  /** Common practice, in inches; 1 in = 25.4 mm. */
  @ParameterizedTest
  @CsvSource({
    "RAIL_END_GAP,1",
    "PAN_DRIP_SETBACK,2",
    "HANGER_END,6",
    "HANGER_SPACING,24",
    "RAIL_FASTENER_SPACING,16",
    "DOWNSPOUT_DIAMETER,3",
    "DOWNSPOUT_OFF_POST,1",
    "PAN_LONGEST,120",
    "GUTTER_LONGEST,480",
    "LEAST_HEADROOM,80"
  })
  void theBuiltInKitFollowsCommonPractice(PanValue value, double inches) {
    assertThat(KitReader.builtIn().get(value)).isCloseTo(inches * 0.0254, within(1e-12));
  }

  /** 1/8 in in 12 in is 1:96; 1/16 in in 12 in is 1:192. */
  @Test
  void pansFallAnEighthAndGuttersASixteenthOfAnInchPerFoot() {
    assertThat(KitReader.builtIn().fall()).isCloseTo(0.125 / 12, within(1e-15));
    assertThat(KitReader.builtIn().gutterFall()).isCloseTo(0.0625 / 12, within(1e-15));
  }

  @Test
  void keysAreUniqueAndEndWithTheirUnit() {
    assertThat(Arrays.stream(PanValue.values()).map(PanValue::key)).doesNotHaveDuplicates();
    assertThat(Arrays.stream(PanValue.values()).map(PanValue::key))
        .allMatch(k -> k.endsWith("Mm") || k.endsWith("RunPerFall") || k.equals("runPerFall"));
    assertThat(PanValue.RAIL_LEG.toSi(100)).isCloseTo(0.1, within(1e-15));
    assertThat(PanValue.RUN_PER_FALL.toSi(96)).isEqualTo(96);
  }

  private static Arguments wrong(String what, Consumer<ObjectNode> change, String... named) {
    return Arguments.of(what, change, named);
  }

  private static ObjectNode entry(ObjectNode kit, String key) {
    return (ObjectNode) kit.get("values").get(key);
  }

  private static ObjectNode firstItem(ObjectNode kit) {
    return (ObjectNode) kit.get("stock").get(0);
  }

  static Stream<Arguments> wrongKits() {
    return Stream.of(
        wrong(
            "unknown value",
            k -> ((ObjectNode) k.get("values")).set("railLagMm", entry(k, "railLegMm")),
            "railLagMm"),
        wrong("unknown key", k -> k.put("colour", "red"), "colour"),
        wrong("unknown key of an item", k -> firstItem(k).put("price", 3), "stock.0.price"),
        wrong(
            "missing value",
            k -> ((ObjectNode) k.get("values")).remove("railLegMm"),
            "railLegMm",
            "missing"),
        wrong("missing key", k -> k.remove("materials"), "materials"),
        wrong("missing key of an item", k -> firstItem(k).remove("kerfMm"), "kerfMm"),
        wrong("missing number", k -> entry(k, "railLegMm").remove("value"), "values.railLegMm"),
        wrong(
            "missing source",
            k -> entry(k, "railLegMm").remove("source"),
            "values.railLegMm",
            "source"),
        wrong(
            "text for a number",
            k -> entry(k, "railLegMm").put("value", "wide"),
            "railLegMm",
            "wide"),
        wrong("null for a number", k -> entry(k, "railLegMm").putNull("value"), "railLegMm"),
        wrong("a list for a text", k -> k.putArray("name"), "at name"),
        wrong("negative", k -> entry(k, "railLegMm").put("value", -100), "railLegMm", "-100"),
        wrong("zero", k -> entry(k, "railLegMm").put("value", 0), "railLegMm", "0"),
        wrong("blank source", k -> entry(k, "railLegMm").put("source", " "), "railLegMm", "source"),
        wrong("unknown material", k -> firstItem(k).put("material", "gold"), "pan-sheet", "gold"),
        wrong("negative kerf", k -> firstItem(k).put("kerfMm", -1), "pan-sheet", "kerf"),
        wrong(
            "stock of no length",
            k -> firstItem(k).putArray("stockLengthsMm").add(0),
            "pan-sheet",
            "stock length"),
        wrong("missing item", k -> firstItem(k).put("id", "other"), "pan-sheet"),
        wrong("another schema", k -> k.put("schema", "underlee/kit/9"), "underlee/kit/9"),
        wrong("another family", k -> k.put("family", "drape"), "drape", "pans"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("wrongKits")
  void aWrongKitIsRefusedWithAMessageThatNamesWhatIsWrong(
      String what, Consumer<ObjectNode> change, String[] named) throws IOException {
    ObjectNode kit = builtInText();
    change.accept(kit);
    assertThatThrownBy(() -> KitReader.read(kit.toString(), "my-kit.json"))
        .isInstanceOf(InputException.class)
        .hasMessageContainingAll(named)
        .satisfies(
            e -> {
              assertThat(((InputException) e).place().file()).contains("my-kit.json");
              assertThat(((InputException) e).advice()).contains("docs/reference");
            });
  }

  @Test
  void textThatIsNoJsonIsRefusedWithItsLineAndColumn() {
    assertThatThrownBy(() -> KitReader.read("{\n  \"schema\": nonsense", "my-kit.json"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("nonsense")
        .satisfies(
            e -> assertThat(((InputException) e).place().toString()).contains("line 2, column"));
  }

  @Test
  void aKitFileIsReadByItsPath(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("own.json");
    ObjectNode text = builtInText();
    text.put("id", "own");
    entry(text, "railLegMm").put("value", 120);
    Files.writeString(file, text.toString());
    Kit kit = KitReader.named(file.toString());
    assertThat(kit.id()).isEqualTo("own");
    assertThat(kit.get(PanValue.RAIL_LEG)).isCloseTo(0.12, within(1e-12));
  }

  @Test
  void aKitThatIsNotThereIsRefusedByName() {
    assertThatThrownBy(() -> KitReader.named("no-such-kit.json"))
        .isInstanceOf(InputException.class)
        .satisfies(
            e -> {
              assertThat(((InputException) e).place().file()).contains("no-such-kit.json");
              assertThat(((InputException) e).advice()).contains("formed-aluminium");
            });
  }
}
