package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.report.DesignJson;
import org.underlee.report.SurveyJson;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;

/** The drawings measured by readers that did not write them, against the JSON. */
class PacketDrawingsTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final double MM_PER_POINT = 25.4 / 72;

  private static Design design;
  private static Map<String, byte[]> files;

  @BeforeAll
  static void makeThePacketOfTheSample() {
    design =
        DeckRun.design(
            DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc")),
            Scope.OUTSIDE,
            KitReader.builtIn());
    Packet packet = PacketBuilder.of(design, new Writing(UnitSystem.IMPERIAL, "en"));
    files = PacketFiles.of(packet, Paper.LETTER);
  }

  private static JsonNode cut(String kind) throws IOException {
    for (JsonNode part : JSON.readTree(DesignJson.write(design)).get("parts")) {
      for (JsonNode cut : part.path("cuts")) {
        if (cut.get("kind").asText().equals(kind)) {
          return cut;
        }
      }
    }
    throw new AssertionError("the sample has no " + kind);
  }

  /** Straight strokes of all pages, mm on paper. */
  private static List<Double> strokes(byte[] pdf) throws IOException {
    List<Double> strokes = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (PDPage page : document.getPages()) {
        List<Float> numbers = new ArrayList<>();
        float x = 0;
        float y = 0;
        for (Object token : new PDFStreamParser(page).parse()) {
          if (token instanceof COSNumber number) {
            numbers.add(number.floatValue());
          } else if (token instanceof Operator operator) {
            boolean line = operator.getName().equals("l");
            if (line || operator.getName().equals("m")) {
              if (line) {
                strokes.add(Math.hypot(numbers.get(0) - x, numbers.get(1) - y) * MM_PER_POINT);
              }
              x = numbers.get(0);
              y = numbers.get(1);
            }
            numbers.clear();
          }
        }
      }
    }
    return strokes;
  }

  private static boolean has(List<Double> lengths, double mm, double within) {
    return lengths.stream().anyMatch(l -> Math.abs(l - mm) <= within);
  }

  @Test
  void templatesAndRulerAreAtFullSizeInThePdfToATenthOfAMillimetre() throws IOException {
    List<Double> strokes = strokes(files.get("packet.pdf"));
    assertThat(has(strokes, 100, 0.1)).as("100 mm of ruler").isTrue();
    assertThat(has(strokes, 4 * 25.4, 0.1)).as("4 in of ruler").isTrue();
    JsonNode notch = cut("notch");
    assertThat(has(strokes, notch.get("lengthMm").asDouble(), 0.1)).isTrue();
    assertThat(has(strokes, notch.get("depthMm").asDouble(), 0.1)).isTrue();
    double fittedToPage = 0.97;
    assertThat(has(strokes, 100 * fittedToPage, 0.1)).as("scaled: not there").isFalse();
  }

  @Test
  void anIndependentReaderMeasuresTheDxfToAHundredthOfAMillimetre(@TempDir Path home)
      throws IOException, InterruptedException {
    String python = "/usr/bin/python3";
    assumeTrue(
        Tools.starts(python, "-c", "import ezdxf"), "skipped: python3-ezdxf is not installed");
    StringBuilder names = new StringBuilder();
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      if (file.getKey().endsWith(".dxf")) {
        Path at = home.resolve(Path.of(file.getKey()).getFileName().toString());
        Files.write(at, file.getValue());
        names.append(at).append('\n');
      }
    }
    String script = ROOT.resolve("core/src/test/python/measure_dxf.py").toAbsolutePath().toString();
    String said = Tools.run(home, List.of(python, script), names.toString());
    int read = 0;
    for (String line : said.split("\n")) {
      JsonNode found = JSON.readTree(line);
      read++;
      assertThat(found.get("version").asText()).isEqualTo("AC1009");
      assertThat(found.get("errors")).isEmpty();
      String name = Path.of(found.get("file").asText()).getFileName().toString();
      if (name.equals("plan.dxf")) {
        joistsSpanWhatTheSurveySays(found);
      } else if (name.startsWith("section-across")) {
        joistsStandApartAsTheJsonSays(found, name.replaceAll(".*-|[.]dxf", ""));
      } else if (name.startsWith("gutter")) {
        guttersReachAsFarAsTheJsonSays(found);
      } else if (name.startsWith("notch")) {
        JsonNode notch = cut("notch");
        assertThat(has(lengths(found, "CUT"), notch.get("lengthMm").asDouble(), 0.01)).isTrue();
        assertThat(has(lengths(found, "CUT"), notch.get("depthMm").asDouble(), 0.01)).isTrue();
      } else if (name.startsWith("collar")) {
        double radius = found.get("circles").get(0).get(1).asDouble();
        assertThat(2 * radius).isCloseTo(cut("round-hole").get("widthMm").asDouble(), within(0.01));
      }
    }
    assertThat(read).isGreaterThan(6);
  }

  /** The pieces abut, so that the whole is as long as all of them, seen from above. */
  private static void guttersReachAsFarAsTheJsonSays(JsonNode found) throws IOException {
    double whole = 0;
    for (JsonNode part : JSON.readTree(DesignJson.write(design)).get("parts")) {
      if (part.get("kind").asText().equals("gutter")) {
        whole += part.get("lengthMm").asDouble() / Math.hypot(1, part.get("fall").asDouble());
      }
    }
    JsonNode box = found.get("boxes").get("GUTTER");
    assertThat(box.get(2).asDouble() - box.get(0).asDouble()).isCloseTo(whole, within(0.01));
  }

  /** Two joists and what is clear between them; the sample's joists are straight. */
  private static void joistsStandApartAsTheJsonSays(JsonNode found, String bay) throws IOException {
    JsonNode field =
        JSON.readTree(SurveyJson.write(design.survey())).get("decks").get(0).get("fields").get(0);
    double across = 0;
    List<String> between = new ArrayList<>();
    for (JsonNode own : field.get("bays")) {
      if (own.get("id").asText().equalsIgnoreCase(bay)) {
        across += own.get("clearWidthHighMm").asDouble();
        own.get("between").forEach(b -> between.add(b.asText()));
      }
    }
    for (JsonNode line : field.get("joistLines")) {
      across += between.contains(line.get("id").asText()) ? line.get("widthMm").asDouble() : 0;
    }
    JsonNode box = found.get("boxes").get("JOIST");
    assertThat(box.get(2).asDouble() - box.get(0).asDouble()).isCloseTo(across, within(0.01));
  }

  private static List<Double> lengths(JsonNode found, String layer) {
    List<Double> lengths = new ArrayList<>();
    for (JsonNode length : found.get("lengths")) {
      if (length.get(0).asText().equals(layer)) {
        lengths.add(length.get(1).asDouble());
      }
    }
    return lengths;
  }

  /** All joists and clear widths side by side, at the high end. */
  private static void joistsSpanWhatTheSurveySays(JsonNode found) throws IOException {
    JsonNode field =
        JSON.readTree(SurveyJson.write(design.survey())).get("decks").get(0).get("fields").get(0);
    double across = 0;
    for (JsonNode line : field.get("joistLines")) {
      across += line.get("widthMm").asDouble();
    }
    for (JsonNode bay : field.get("bays")) {
      across += bay.get("clearWidthHighMm").asDouble();
    }
    JsonNode box = found.get("boxes").get("JOIST");
    assertThat(box.get(2).asDouble() - box.get(0).asDouble()).isCloseTo(across, within(0.01));
  }

  @Test
  void twoPacketsOfOneDesignAreTheSameFileByFile() {
    Packet again = PacketBuilder.of(design, new Writing(UnitSystem.IMPERIAL, "en"));
    Map<String, byte[]> twice = PacketFiles.of(again, Paper.LETTER);
    assertThat(twice.keySet()).isEqualTo(files.keySet());
    files.forEach((name, bytes) -> assertThat(twice.get(name)).as(name).isEqualTo(bytes));
  }
}
