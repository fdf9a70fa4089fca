package org.underlee.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
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
    return builtInText("formed-aluminium");
  }

  static ObjectNode builtInText(String name) throws IOException {
    try (InputStream in = KitReader.class.getResourceAsStream(name + ".json")) {
      return (ObjectNode) JSON.readTree(in);
    }
  }

  @Test
  void theBuiltInKitHasEveryValueAndItemEachWithItsSource() {
    Kit kit = KitReader.builtIn();
    assertThat(kit.id()).isEqualTo("formed-aluminium");
    assertThat(kit.values().keySet()).containsExactlyInAnyOrderElementsOf(kit.family().numbers());
    assertThat(kit.values().values()).noneMatch(v -> v.source().isBlank());
    assertThat(kit.stock())
        .extracting(StockItem::id)
        .containsExactlyElementsOf(kit.family().items());
    assertThat(kit.stock()).noneMatch(s -> s.source().isBlank());
    assertThat(kit.materials()).noneMatch(m -> m.source().isBlank());
    assertThat(kit.stock()).allMatch(s -> kit.materialOf(s).density() > 0);
    assertThat(KitReader.named("formed-aluminium")).isEqualTo(kit);
  }

  /** Common practice, in inches; 1 in = 25.4 mm. */
  @ParameterizedTest
  @CsvSource({
    "railEndGapMm,1",
    "panDripSetbackMm,2",
    "hangerEndMm,6",
    "hangerSpacingMm,24",
    "railFastenerSpacingMm,16",
    "downspoutDiameterMm,3",
    "downspoutOffPostMm,1",
    "panLongestMm,120",
    "gutterLongestMm,480",
    "leastHeadroomMm,80"
  })
  void theBuiltInKitFollowsCommonPractice(String key, double inches) {
    Kit kit = KitReader.builtIn();
    assertThat(kit.get(kit.family().number(key).orElseThrow()))
        .isCloseTo(inches * 0.0254, within(1e-12));
  }

  @Test
  void aKitNeedNotSayByWhatSizeItsDownspoutIsCalled() throws IOException {
    ObjectNode text = builtInText();
    ((ObjectNode) text.get("values")).remove("downspoutNominalMm");
    Kit unnamed = KitReader.read(text.toString(), "my-kit.json");
    assertThat(unnamed.find(DrainValue.DOWNSPOUT_NOMINAL)).isEmpty();
    assertThat(unnamed).isEqualTo(KitReader.builtIn().without(DrainValue.DOWNSPOUT_NOMINAL));
    assertThat(KitReader.builtIn().find(DrainValue.DOWNSPOUT_NOMINAL)).hasValue(76.2 * 0.001);
  }

  /** 1/8 in in 12 in is 1:96; 1/16 in in 12 in is 1:192. */
  @Test
  void pansFallAnEighthAndGuttersASixteenthOfAnInchPerFoot() {
    assertThat(KitReader.builtIn().fall()).isCloseTo(0.125 / 12, within(1e-15));
    assertThat(KitReader.builtIn().gutterFall()).isCloseTo(0.0625 / 12, within(1e-15));
  }

  @Test
  void keysAreUniqueAndEndWithTheirUnit() {
    for (Family family : Family.values()) {
      assertThat(family.numbers()).extracting(KitNumber::key).doesNotHaveDuplicates();
      assertThat(family.items()).doesNotHaveDuplicates();
    }
    assertThat(Arrays.stream(Family.values()).flatMap(f -> f.numbers().stream()))
        .extracting(KitNumber::key)
        .allMatch(k -> k.endsWith("Mm") || k.endsWith("RunPerFall") || k.equals("runPerFall"));
    assertThat(PanValue.RAIL_LEG.toSi(100)).isCloseTo(0.1, within(1e-15));
    assertThat(DrainValue.RUN_PER_FALL.toSi(96)).isEqualTo(96);
  }

  static Stream<Kit> builtInKits() {
    return KitReader.allBuiltIn().stream();
  }

  @ParameterizedTest
  @MethodSource("builtInKits")
  void everyBuiltInKitIsNamedLikeItsFileAndGivesASourceForEveryNumber(Kit kit) {
    assertThat(KitReader.named(kit.id())).isEqualTo(kit);
    assertThat(kit.values().keySet()).containsExactlyInAnyOrderElementsOf(kit.family().numbers());
    assertThat(kit.values().values()).noneMatch(v -> v.source().isBlank());
    assertThat(kit.stock()).noneMatch(s -> s.source().isBlank());
    assertThat(kit.stock())
        .extracting(StockItem::id)
        .containsExactlyElementsOf(kit.family().items());
  }

  /**
   * Tables of linear expansion, rigid PVC as for conduit: 60.8e-6 per kelvin; 100 degrees F is 55.6
   * K. So a pan of 8 ft moves 8.2 mm and one 470 mm wide 1.6 mm; two rails of 10 ft 20.6 mm.
   */
  @Test
  void vinylHasRoomForWhatItGrowsOverAHundredDegrees() {
    Kit kit = KitReader.named("rigid-vinyl");
    double growth = 60.8e-6 * 100 * 5 / 9;
    assertThat(kit.get(DrainValue.HEAD_GAP)).isGreaterThan(growth * kit.get(PanValue.PAN_LONGEST));
    assertThat(2 * kit.get(PanValue.PAN_SIDE_GAP))
        .isGreaterThan(growth * kit.get(PanValue.PAN_WIDEST));
    assertThat(kit.get(PanValue.RAIL_END_GAP)).isGreaterThan(growth * 2 * 3.048);
    assertThat(kit.get(PanValue.PAN_LAP))
        .isGreaterThan(0.075 + growth * kit.get(PanValue.PAN_LONGEST));
  }

  /** 26 gauge is 0.0217 in, 24 gauge 0.0276 in; steel weighs 490 lb/ft3, that is 7850 kg/m3. */
  @Test
  void galvanisedSteelIsAsThickAndHeavyAsTheTablesSay() {
    Kit kit = KitReader.named("galvanised-steel");
    StockItem pan = kit.item(Items.PAN_SHEET);
    assertThat(pan.thickness()).isCloseTo(0.0217 * 0.0254, within(1e-5));
    assertThat(kit.item(Items.GUTTER).thickness()).isCloseTo(0.0276 * 0.0254, within(1e-5));
    assertThat(kit.materialOf(pan).density()).isCloseTo(490 * 16.0185, within(2.0));
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
        wrong("no way of selling", k -> firstItem(k).remove("shop"), "shop"),
        wrong(
            "a box of nothing",
            k -> ((ObjectNode) firstItem(k).get("shop")).put("pieces", 0),
            "pan-sheet",
            "0 pieces"),
        wrong(
            "fewer than no spares",
            k -> ((ObjectNode) firstItem(k).get("shop")).put("sparePercent", -5),
            "pan-sheet",
            "-5"),
        wrong("missing item", k -> firstItem(k).put("id", "other"), "pan-sheet"),
        wrong("another schema", k -> k.put("schema", "underlee/kit/9"), "underlee/kit/9"),
        wrong("another family", k -> k.put("family", "tarpaulin"), "tarpaulin", "pans"));
  }

  private static Arguments against(String key, double value, String... named) {
    return wrong(key + " " + value, k -> entry(k, key).put("value", value), named);
  }

  /** Each of the built-in kit's numbers set so that it contradicts another. */
  static Stream<Arguments> contradictions() {
    return Stream.of(
        against("panNarrowestMm", 600, "panNarrowestMm (600) is not less than panWidestMm (560)"),
        against("panLapMm", 3048, "panLapMm (3048) is not less than panLongestMm (3048)"),
        against("collarLengthMm", 3100, "collarLengthMm (3100)", "panLongestMm (3048)"),
        against(
            "railLegMm",
            30,
            "railFastenerMarginMm (15) plus railFastenerMarginMm (15)",
            "railLegMm (30)"),
        against("panSideGapMm", 25.5, "panSideGapMm (25.5)", "railLedgeMm (25)"),
        against("railLedgeMm", 45, "railLedgeMm (45)", "panNarrowestMm (90)"),
        against("headRailLeastLegMm", 60, "headRailLeastLegMm (60)", "headRailLegMm (60)"),
        against("headGapMm", 50, "headGapMm (50)", "headRailLipMm (50)"),
        against(
            "railEndGapMm",
            90,
            "railEndGapMm (90) plus panDripSetbackMm (50.8)",
            "gutterBackGapMm (6) plus gutterWidthMm (127)"),
        against("downspoutDiameterMm", 127, "downspoutDiameterMm (127)", "gutterWidthMm (127)"),
        against(
            "downspoutNominalMm",
            101.6,
            "downspoutNominalMm (101.6) is more than downspoutDiameterMm (76.2)"),
        against("panLongestMm", 15240, "panLongestMm (15240)", "pan-sheet", "15240 mm"),
        against("panWidestMm", 3100, "panWidestMm (3100)", "head-rail", "3048 mm"),
        against("gutterLongestMm", 12200, "gutterLongestMm (12200)", "gutter", "12192 mm"),
        wrong(
            "text for a number",
            k -> entry(k, "railLegMm").put("value", "4 in"),
            "at values.railLegMm.value: \"4 in\" stands where a number is expected"),
        wrong(
            "text for a list",
            k -> firstItem(k).put("stockLengthsMm", "long"),
            "at stock.0.stockLengthsMm: a list, [ ] is expected here"),
        wrong("no id", k -> k.remove("id"), "the key \"id\" is missing"),
        wrong(
            "no length of what is cut",
            k -> firstItem(k).putArray("stockLengthsMm"),
            "pan-sheet",
            "no stock length"),
        wrong("sheet of no thickness", k -> firstItem(k).put("thicknessMm", 0), "thicknessMm 0"),
        wrong(
            "a material twice",
            k -> ((ArrayNode) k.get("materials")).add(k.get("materials").get(0)),
            "more than one material",
            "aluminium"),
        wrong(
            "an item twice",
            k -> ((ArrayNode) k.get("stock")).add(firstItem(k)),
            "more than one stock item",
            "pan-sheet"),
        wrong(
            "material of no weight",
            k -> ((ObjectNode) k.get("materials").get(0)).put("densityKgPerM3", 0),
            "densityKgPerM3 0"),
        wrong(
            "colour out of range",
            k -> ((ArrayNode) k.get("materials").get(0).get("colour")).set(0, 256),
            "256"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource({"wrongKits", "contradictions"})
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
              assertThat(((InputException) e).advice())
                  .contains("formed-aluminium", "galvanised-steel", "rigid-vinyl");
            });
  }
}
