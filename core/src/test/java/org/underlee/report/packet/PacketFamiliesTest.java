package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.kit.Family;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.kit.SheetValue;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.report.DesignJson;
import org.underlee.report.TakeoffJson;
import org.underlee.report.packet.pdf.PdfWriter;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;

/** Troughs and ribbed sheets have all sheets of a packet too, with marks and cuts of their own. */
class PacketFamiliesTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final List<String> KITS = List.of("membrane-drape", "ribbed-sheet");
  private static final double MM = 1000;

  /** The run ends this little before the beam at most, for a gap or for posts, millimetres. */
  private static final double GAP = 40;

  private static List<Design> designs;

  @BeforeAll
  static void layOutTheSampleWithEachKit() {
    designs = KITS.stream().map(KitReader::named).map(PacketFamiliesTest::design).toList();
  }

  private static Design design(Kit kit) {
    // Troughs are hung from bare joists, and need bays without blocking up to the joist tops.
    boolean drape = kit.family() == Family.DRAPE;
    String sample = drape ? "harbour-balcony" : "pine-deck";
    Scope bare = Scope.OUTSIDE.with(Wishes.NONE.withBoardsOff());
    return DeckRun.design(
        DeckRun.survey(ROOT.resolve("samples/" + sample + "/" + sample + ".ifc")),
        drape ? bare : Scope.OUTSIDE,
        kit);
  }

  /**
   * What is marked lies over the seat of the JSON by nothing, or by a batten on its higher edge.
   */
  private static double overSeat(Design design, double fall) {
    Kit kit = design.layout().kit();
    return switch (kit.family()) {
      case PANS, DRAPE -> 0;
      case SHEET ->
          MM * (kit.get(SheetValue.BATTEN_DEPTH) + fall * kit.get(SheetValue.BATTEN_WIDTH) / 2);
    };
  }

  /** The sample's joists are straight and level, so their bottoms lie at the field's zero. */
  @Test
  void everyMarkIsTheSeatOfTheJsonFromTheHouseAndFromTheBeam() throws IOException {
    for (Design design : designs) {
      JsonNode field = JSON.readTree(DesignJson.write(design)).get("fields").get(0);
      double high = field.get("seatHighMm").asDouble();
      double fall = field.get("fall").asDouble();
      Job job = new Job(design, new Writing(UnitSystem.METRIC, "en"));
      List<SeatMarks.Row> rows = SeatMarks.of(job.places().get(0));
      assertThat(rows).hasSizeGreaterThan(5);
      for (SeatMarks.Row row : rows) {
        assertThat(row.marks()).hasSizeGreaterThan(1);
        for (SeatMarks.Mark mark : row.marks()) {
          String where = design.layout().kit().id() + " " + row.line().id();
          double seat = high - fall * MM * mark.at().y() + overSeat(design, fall);
          assertThat(MM * mark.height()).as(where).isCloseTo(seat, within(0.05));
          assertThat(MM * (mark.fromHouse() + mark.fromBeam()))
              .as(where)
              .isBetween(field.get("runMm").asDouble() - 0.05, field.get("runMm").asDouble() + GAP);
        }
      }
    }
  }

  @Test
  void everyCutOfTheTakeoffIsInTheCutListWithAsManyLabels() throws IOException {
    for (Design design : designs) {
      List<String> wanted = new ArrayList<>();
      for (JsonNode cut : JSON.readTree(TakeoffJson.write(design)).get("cuts")) {
        String length = (int) Math.floor(cut.get("lengthMm").asDouble()) + "\u00a0mm";
        wanted.add(cut.get("count").asInt() + "|" + length);
      }
      Job job = new Job(design, new Writing(UnitSystem.METRIC, "en"));
      List<String> found = new ArrayList<>();
      for (Block block : new CutSheet(job).sheet().blocks()) {
        if (block instanceof Block.Table t && t.columns().get(0).name().equals("Pieces")) {
          for (List<String> row : t.rows()) {
            found.add(row.get(0) + "|" + row.get(2));
            String labels = row.get(row.size() - 1);
            assertThat(labels.split(" ")).hasSize(Integer.parseInt(row.get(0)));
          }
        }
      }
      assertThat(found).isNotEmpty().containsExactlyInAnyOrderElementsOf(wanted);
    }
  }

  @Test
  void theHosesWaterOfAllBaysIsTheDrainedAreaOfTheProof() {
    for (Design design : designs) {
      Job job = new Job(design, new Writing(UnitSystem.METRIC, "en"));
      Block.Table table =
          (Block.Table)
              new HoseSheet(job)
                  .sheet().blocks().stream()
                      .filter(b -> b instanceof Block.Table)
                      .findFirst()
                      .get();
      assertThat(table.rows()).hasSize(job.places().get(0).served().size());
      double drained =
          table.rows().stream()
              .mapToDouble(r -> Double.parseDouble(r.get(1).replaceAll("[^0-9.]", "")))
              .sum();
      List<String> served = design.layout().fields().get(0).bays();
      double proof =
          design.proof().outlets().stream()
              .flatMap(o -> o.bays().entrySet().stream())
              .filter(e -> served.contains(e.getKey()))
              .mapToDouble(Map.Entry::getValue)
              .sum();
      assertThat(drained).isCloseTo(proof, within(0.01 * table.rows().size()));
    }
  }

  @Test
  void bothLanguagesHaveEverySheetAndThePdfSaysWhatIsMarked() throws IOException {
    for (Design design : designs) {
      for (String language : Writing.LANGUAGES) {
        Packet packet = PacketBuilder.of(design, new Writing(UnitSystem.IMPERIAL, language));
        Map<String, Sheet> sheets =
            packet.sheets().stream().collect(Collectors.toMap(Sheet::id, s -> s));
        assertThat(sheets.keySet())
            .contains("marks", "cuts", "sections", "build", "hose", "gutter", "cutting", "labels")
            .doesNotContain("templates");
        assertThat(packet.bays()).hasSize(design.layout().fields().get(0).bays().size());
        try (PDDocument document = Loader.loadPDF(PdfWriter.write(packet, Paper.LETTER))) {
          String text =
              new PDFTextStripper()
                  .getText(document)
                  .replace('\u00a0', ' ')
                  .replaceAll("\\s+", " ");
          Job job = new Job(design, packet.writing());
          for (SeatMarks.Row row : SeatMarks.of(job.places().get(0))) {
            assertThat(text).contains(job.height(row.first().height()).replace('\u00a0', ' '));
          }
        }
      }
    }
  }
}
