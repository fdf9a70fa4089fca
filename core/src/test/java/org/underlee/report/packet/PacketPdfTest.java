package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.report.DesignJson;
import org.underlee.report.TakeoffJson;
import org.underlee.report.packet.pdf.PdfWriter;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;

class PacketPdfTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  private static Design design;
  private static Packet packet;
  private static byte[] pdf;

  @BeforeAll
  static void makeThePacketOfTheSample() {
    design =
        DeckRun.design(
            DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc")),
            Scope.OUTSIDE,
            KitReader.builtIn());
    packet = PacketBuilder.of(design, new Writing(UnitSystem.METRIC, "en"));
    pdf = PdfWriter.write(packet, Paper.A4);
  }

  /** Lengths as a tape shows them, written anew here from the JSON's millimetres. */
  /**
   * Down to the millimetre, so that the piece fits; what is a ten-thousandth below one is on it.
   */
  private static String tape(double mm) {
    return (long) Math.floor(mm + 1e-4) + " mm";
  }

  private static String text(byte[] bytes) throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes)) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setSortByPosition(true);
      return plain(stripper.getText(document));
    }
  }

  private static String plain(String text) {
    return text.replace('\u00a0', ' ').replaceAll("\\s+", " ");
  }

  private static Sheet sheet(String id) {
    return packet.sheets().stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
  }

  private static List<Block.Table> tables(String id) {
    return sheet(id).blocks().stream()
        .filter(b -> b instanceof Block.Table)
        .map(b -> (Block.Table) b)
        .toList();
  }

  @Test
  void theSamePacketGivesTheSameBytes() {
    Packet again = PacketBuilder.of(design, new Writing(UnitSystem.METRIC, "en"));
    assertThat(PdfWriter.write(again, Paper.A4)).isEqualTo(pdf);
  }

  @Test
  void everyCutOfTheTakeoffIsInTheCutListWithItsPieces() throws IOException {
    JsonNode takeoff = JSON.readTree(TakeoffJson.write(design));
    List<String> wanted = new ArrayList<>();
    for (JsonNode cut : takeoff.get("cuts")) {
      wanted.add(cut.get("count").asInt() + "|" + tape(cut.get("lengthMm").asDouble()));
    }
    List<String> found = new ArrayList<>();
    int labels = 0;
    for (Block.Table table : tables("cuts")) {
      if (!table.columns().get(0).name().equals("Pieces")) {
        continue;
      }
      for (List<String> row : table.rows()) {
        found.add(row.get(0) + "|" + plain(row.get(2)));
        assertThat(row.get(row.size() - 1).split(" ")).hasSize(Integer.parseInt(row.get(0)));
        labels += Integer.parseInt(row.get(0));
      }
    }
    assertThat(found).containsExactlyInAnyOrderElementsOf(wanted);
    assertThat(labels).isGreaterThan(50);
  }

  /**
   * The seat worked out from the JSON: seat at the field's high end less fall times run. The
   * sample's joists are straight and level, so their bottoms lie at the field's zero.
   */
  @Test
  void everyMarkIsTheSeatOfTheJson() throws IOException {
    JsonNode json = JSON.readTree(DesignJson.write(design));
    JsonNode field = json.get("fields").get(0);
    double high = field.get("seatHighMm").asDouble();
    double fall = field.get("fall").asDouble();
    Map<String, Double> lengths = new HashMap<>();
    for (JsonNode part : json.get("parts")) {
      if (part.get("kind").asText().equals("side-rail")) {
        lengths.put(part.get("label").asText(), part.get("lengthMm").asDouble());
      }
    }
    Job job = new Job(design, packet.writing());
    List<SeatMarks.Row> rows = SeatMarks.of(job.places().get(0));
    assertThat(rows).hasSize(lengths.size());
    double headGap = 0;
    for (SeatMarks.Row row : rows) {
      String rail = row.parts().get(0).label();
      double low = headGap + lengths.get(rail) / Math.hypot(1, fall);
      assertThat(1000 * row.first().height())
          .as(rail)
          .isCloseTo(high - fall * headGap, org.assertj.core.api.Assertions.within(0.01));
      assertThat(1000 * row.last().height())
          .as(rail)
          .isCloseTo(high - fall * low, org.assertj.core.api.Assertions.within(0.01));
      assertThat(1000 * row.last().fromHouse())
          .isCloseTo(low, org.assertj.core.api.Assertions.within(0.01));
    }
  }

  @Test
  void whatTheSheetsSayStandsInThePdfAsTextThatCanBeCopied() throws IOException {
    String text = text(pdf);
    for (Sheet sheet : packet.sheets()) {
      assertThat(text).contains(plain(sheet.title()));
      for (Block block : sheet.blocks()) {
        if (block instanceof Block.Table table) {
          for (List<String> row : table.rows()) {
            for (String word : plain(String.join(" ", row)).split(" ")) {
              assertThat(text).contains(word);
            }
          }
        }
      }
    }
  }

  @Test
  void everySheetHasABookmarkAndEveryLetterIsEmbedded() throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      List<String> titles = new ArrayList<>();
      document
          .getDocumentCatalog()
          .getDocumentOutline()
          .children()
          .forEach(i -> titles.add(i.getTitle()));
      assertThat(titles).isEqualTo(packet.sheets().stream().map(Sheet::title).toList());
      int fonts = 0;
      for (var page : document.getPages()) {
        for (var name : page.getResources().getFontNames()) {
          assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
          fonts++;
        }
      }
      assertThat(fonts).isGreaterThan(5);
    }
  }
}
