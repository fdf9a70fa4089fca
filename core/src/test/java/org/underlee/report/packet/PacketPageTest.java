package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Properties;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.report.packet.web.WebPage;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;

class PacketPageTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final String CHROMIUM = "/usr/bin/chromium";
  private static final List<String> SCRIPTS =
      List.of("package.json", "package-lock.json", "page.mjs");

  private static Packet packet;
  private static String page;

  @BeforeAll
  static void makeThePageOfTheSample() {
    Design design =
        DeckRun.design(
            DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc")),
            Scope.OUTSIDE,
            KitReader.builtIn());
    packet = PacketBuilder.of(design, new Writing(UnitSystem.METRIC, "en"));
    page = WebPage.write(packet);
  }

  private static String plain(String text) {
    return text.replace('\u00a0', ' ').replaceAll("\\s+", " ").strip();
  }

  @Test
  void aPhoneAndADesktopTapTickReloadTurnAndPrintWithoutTheNetwork()
      throws IOException, InterruptedException {
    assumeTrue(Tools.starts("node", "--version"), "skipped: Node.js is not on the path");
    assumeTrue(Tools.starts("npm", "--version"), "skipped: npm is not on the path");
    assumeTrue(Files.isExecutable(Path.of(CHROMIUM)), "skipped: Chromium is not installed");
    Path home = Files.createDirectories(ROOT.resolve("core/target/page"));
    for (String script : SCRIPTS) {
      Files.copy(
          ROOT.resolve("core/src/test/node").resolve(script),
          home.resolve(script),
          StandardCopyOption.REPLACE_EXISTING);
    }
    if (!Files.isDirectory(home.resolve("node_modules/axe-core"))) {
      Tools.run(home, List.of("npm", "ci", "--no-audit", "--no-fund"), "");
    }
    Path file = Files.writeString(home.resolve("packet.html"), page).toAbsolutePath();
    String said =
        Tools.run(home, List.of("node", "page.mjs"), file + "\n" + CHROMIUM + "\nF1-B6\nF1-B9\n");
    JsonNode found = JSON.readTree(said);
    assertThat(found.get("requests")).as("requests to anything else").isEmpty();
    assertThat(found.get("errors")).isEmpty();
    assertThat(found.get("violations")).as("of axe-core, light and dark").isEmpty();
    assertThat(found.get("views")).hasSize(2);
    for (JsonNode view : found.get("views")) {
      String size = view.get("size").asText();
      assertThat(view.get("kept").asBoolean()).as(size + ": ticks after a reload").isTrue();
      assertThat(view.get("filled").asBoolean()).as(size).isTrue();
      assertThat(view.get("planFilled").asBoolean()).as(size + ": in the plan").isTrue();
      assertThat(view.get("turned").asBoolean()).as(size).isTrue();
      assertThat(view.get("overflow").asBoolean()).as(size + ": wider than the screen").isFalse();
      for (Block block : card("F1-B6").blocks()) {
        if (block instanceof Block.Table table) {
          for (List<String> row : table.rows()) {
            row.forEach(c -> assertThat(plain(view.get("text").asText())).contains(plain(c)));
          }
        }
      }
    }
    assertThat(found.get("printed").asText()).isEqualTo("%PDF-");
  }

  private static Packet.BayCard card(String label) {
    return packet.bays().stream().filter(b -> b.label().equals(label)).findFirst().orElseThrow();
  }

  /** Templates and stickers are for paper only. */
  @Test
  void everyCellOfEverySheetIsOnThePage() {
    String text =
        plain(
            page.replaceAll("<[^>]*>", " ")
                .replace("&quot;", "\"")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&"));
    int cells = 0;
    for (Sheet sheet : packet.sheets()) {
      for (Block block : sheet.blocks()) {
        if (block instanceof Block.Table table && !sheet.id().equals("templates")) {
          for (List<String> row : table.rows()) {
            for (String cell : row) {
              assertThat(text).contains(plain(cell));
              cells++;
            }
          }
        }
      }
    }
    assertThat(cells).isGreaterThan(300);
  }

  @Test
  void thePageNamesNothingThatLiesElsewhere() {
    String bare = page.replace("http://www.w3.org/2000/svg", "");
    assertThat(bare).doesNotContain("http://").doesNotContain("https://");
    assertThat(bare).contains("default-src 'none'");
  }

  @Test
  void theSecondLanguageSaysEverythingThatTheFirstSays() throws IOException {
    Properties english = phrases("phrases.properties");
    Properties spanish = phrases("phrases_es.properties");
    assertThat(spanish.stringPropertyNames()).isEqualTo(english.stringPropertyNames());
    for (String key : english.stringPropertyNames()) {
      for (int i = 0; i < 6; i++) {
        String part = "{" + i + "}";
        assertThat(spanish.getProperty(key).contains(part))
            .as(key + " " + part)
            .isEqualTo(english.getProperty(key).contains(part));
      }
    }
    Writing es = new Writing(UnitSystem.METRIC, "es");
    assertThat(es.area(12.5)).isEqualTo("12,50 m²");
    assertThat(es.say("marks.title")).isEqualTo("Marcas de trazado");
  }

  private static Properties phrases(String name) throws IOException {
    Properties properties = new Properties();
    try (var in = Packet.class.getResourceAsStream(name)) {
      properties.load(new java.io.InputStreamReader(in, java.nio.charset.StandardCharsets.UTF_8));
    }
    return properties;
  }
}
