package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.report.DesignJson;
import org.underlee.report.SurveyJson;
import org.underlee.report.TakeoffJson;
import org.underlee.report.packet.Printed.Kind;
import org.underlee.report.packet.pdf.PdfWriter;
import org.underlee.report.packet.web.WebPage;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Every number that is printed or shown is one of the JSON, or is named here with why it is not.
 */
class PacketNumbersTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /** Numbers that are no results; each says what it is. */
  private static final Map<String, Pattern> NO_RESULTS =
      Map.of(
          "the number of a page", Pattern.compile("Page \\d+ of \\d+"),
          "the scale of a drawing",
              Pattern.compile("Scale\\s1:\\d+\\swhere\\sthe\\spaper\\sis\\sprinted\\sat\\s100\\s%"),
          "the advice to printers", Pattern.compile("again\\sat\\s100\\s%"),
          "the check ruler", Pattern.compile("(?m)^(100 mm|4 in)$"),
          "the number of a step", Pattern.compile("(?m)^\\d{1,2}\\. "),
          "the scale bar of the plan", Pattern.compile("(?m)^[0-6]( m| ft)?$"),
          "the name of a hash", Pattern.compile("SHA-256"),
          "the shape that is turned", Pattern.compile("3-D"));

  /** Names of bays, joists, pieces, fields, files, and hashes. */
  private static final Pattern NAMES =
      Pattern.compile("[A-Za-z][\\w/.-]*\\d[\\w/.-]*|\\b[0-9a-f]{8,64}\\b");

  private static Design design;
  private static JsonNode survey;
  private static JsonNode json;
  private static JsonNode takeoff;
  private static JsonNode marks;
  private static JsonNode kit;

  @BeforeAll
  static void makeTheJsonOfTheSample() throws IOException {
    design =
        DeckRun.design(
            DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc")),
            Scope.OUTSIDE,
            KitReader.builtIn());
    survey = JSON.readTree(SurveyJson.write(design.survey()));
    json = JSON.readTree(DesignJson.write(design));
    takeoff = JSON.readTree(TakeoffJson.write(design));
    marks = JSON.readTree(packet(UnitSystem.METRIC).marks());
    kit = JSON.readTree(KitReader.class.getResource(design.layout().kit().id() + ".json"));
  }

  private static Packet packet(UnitSystem units) {
    return PacketBuilder.of(design, new Writing(units, "en"));
  }

  /** The JSON that a sheet may take numbers from. */
  private static JsonNumbers allowed(String sheet, UnitSystem units) {
    JsonNumbers known = new JsonNumbers().all(json.get("input"));
    known.words(json).words(survey).words(takeoff);
    switch (sheet) {
      case "cover" -> cover(known);
      case "site" -> known.all(json.get("checklist"));
      case "plan", "bays" -> {
        known.all(survey.get("decks")).all(json.get("fields"));
        for (JsonNode part : json.get("parts")) {
          if (part.get("kind").asText().equals("gutter")) {
            known.add(Kind.FALL, part.get("fall").asDouble(), 5e-10);
          }
        }
        if (sheet.equals("bays")) {
          known.all(marks);
          pieces(known, units);
        }
      }
      case "buy" -> buy(known);
      case "cutting" ->
          known
              .all(takeoff.get("lines"))
              .pieces(takeoff.get("cuts"), units)
              .pieces(takeoff.get("stock"), units);
      case "cuts" -> {
        known.all(takeoff.get("lines")).pieces(takeoff.get("cuts"), units);
        pieces(known, units);
      }
      case "templates" -> pieces(known, units);
      case "build" -> known.all(kit).all(json.get("fields")).all(json.get("parts"));
      case "marks" -> marks(known);
      case "sections" -> {
        marks(known);
        pieces(known, units);
        for (String what : List.of("clearWidths", "blocking", "crossings")) {
          JsonNumbers.at(survey, "decks/fields/bays/" + what).forEach(known::all);
        }
        JsonNumbers.at(survey, "decks/fields/bays/lengthMm")
            .forEach(l -> known.length(l.asDouble()));
      }
      case "gutter" -> {
        known.all(marks);
        pieces(known, units);
        known.add(Kind.PLAIN, 3, 0); // times taller than it is
      }
      case "hose" -> hose(known);
      case "labels" -> pieces(known, units);
      case "sources" ->
          known.all(kit).all(json.get("fields")).all(json.get("findings")).all(survey);
      default -> known.all(json.get("input"));
    }
    return known;
  }

  private static void cover(JsonNumbers known) {
    known.all(json.get("findings")).all(json.get("fields")).all(json.get("drain"));
    known.add(Kind.SHARE, json.get("dryFraction").asDouble(), 5e-7);
    Map<String, Integer> counts = new TreeMap<>();
    for (JsonNode part : json.get("parts")) {
      counts.merge(part.get("kind").asText(), part.path("count").asInt(1), Integer::sum);
    }
    counts.values().forEach(c -> known.add(Kind.PLAIN, c, 0));
    JsonNumbers.at(survey, "decks/fields")
        .forEach(f -> known.add(Kind.PLAIN, f.get("bays").size(), 0));
  }

  private static void buy(JsonNumbers known) {
    known.all(takeoff.get("lines")).all(takeoff.get("order")).all(takeoff.get("stock"));
    for (JsonNode line : takeoff.get("lines")) {
      double quantity = line.get("quantity").asDouble();
      known.length(1000 * quantity);
      double taken = 0;
      double left = 0;
      for (JsonNode stock : takeoff.get("stock")) {
        if (stock.get("item").equals(line.get("item"))) {
          taken += stock.get("pieces").asInt() * stock.get("stockLengthMm").asDouble();
          left += stock.get("pieces").asInt() * stock.get("offcutMm").asDouble();
        }
      }
      if (taken > 0) {
        known.add(Kind.SHARE, left / taken, 1e-4);
      }
    }
  }

  /** Lengths of pieces and their cuts; a cut's end is where it begins and its length. */
  private static void pieces(JsonNumbers known, UnitSystem units) {
    int notched = 0;
    for (JsonNode part : json.get("parts")) {
      known.pieces(part, units);
      for (JsonNode cut : part.path("cuts")) {
        known.length(cut.path("fromMm").asDouble() + cut.path("lengthMm").asDouble());
      }
      notched += part.path("cuts").path(0).path("kind").asText().equals("notch") ? 1 : 0;
    }
    known.add(Kind.PLAIN, notched, 0);
  }

  /** With what the string falls from end to end, and how near it must lie. */
  private static void marks(JsonNumbers known) {
    known.all(marks);
    for (JsonNode row : JsonNumbers.at(marks, "fields/marks")) {
      JsonNode at = row.get("at");
      double fall = json.get("fields").get(0).get("fall").asDouble();
      known.length(
          fall
              * (at.get(at.size() - 1).get("fromHouseMm").asDouble()
                  - at.get(0).get("fromHouseMm").asDouble()));
    }
    known.length(2).length(25.4 / 16);
  }

  /** What ten minutes' worth of the proof's hard rain is on each bay's area. */
  private static void hose(JsonNumbers known) {
    double minutes = 60 * 10 / json.get("drain").get("stormMmPerHour").asDouble();
    known.add(Kind.PLAIN, minutes, 0).length(10);
    Map<String, Double> areas = new LinkedHashMap<>();
    for (JsonNode bay : JsonNumbers.at(json, "drain/outlets/bays")) {
      areas.merge(bay.get("bay").asText(), bay.get("areaM2").asDouble(), Double::sum);
    }
    for (double area : areas.values()) {
      known.add(Kind.AREA, area, 5e-7);
      known.add(Kind.VOLUME, area * 0.010, 5e-9).add(Kind.VOLUME, area * 0.010 / minutes, 5e-9);
    }
  }

  /** The text of each sheet of the PDF, by the bookmarks. */
  private static Map<String, String> sheetsOfPdf(Packet packet, Paper paper) throws IOException {
    Map<String, String> texts = new LinkedHashMap<>();
    try (PDDocument document = Loader.loadPDF(PdfWriter.write(packet, paper))) {
      List<Integer> starts = new ArrayList<>();
      for (var item : document.getDocumentCatalog().getDocumentOutline().children()) {
        starts.add(1 + document.getPages().indexOf(item.findDestinationPage(document)));
      }
      starts.add(document.getNumberOfPages() + 1);
      for (int i = 0; i < packet.sheets().size(); i++) {
        StringBuilder text = new StringBuilder();
        for (int page = starts.get(i); page < starts.get(i + 1); page++) {
          text.append(new TextAsSet().of(document.getPage(page - 1)));
        }
        texts.put(packet.sheets().get(i).id(), text.toString());
      }
    }
    return texts;
  }

  private static Map<String, String> sectionsOfPage(Packet packet) {
    Map<String, String> texts = new LinkedHashMap<>();
    Matcher sections =
        Pattern.compile("<section id=\"(\\w+)\">(.*?)</section>", Pattern.DOTALL)
            .matcher(WebPage.write(packet));
    while (sections.find()) {
      String text =
          sections.group(2).replaceAll("(?s)<style.*?</style>", "").replaceAll("<[^>]*>", "\n");
      texts.put(
          sections.group(1),
          text.replace("&quot;", "\"")
              .replace("&lt;", "<")
              .replace("&gt;", ">")
              .replace("&amp;", "&"));
    }
    return texts;
  }

  /** A name that may be broken between its words. */
  private static Pattern wrapped(String name) {
    return Pattern.compile(
        Stream.of(name.split(" ")).map(Pattern::quote).collect(Collectors.joining("\\s+")));
  }

  /** What is left when names and what is no result are taken out; names that are in no file. */
  private static String bare(String text, JsonNumbers known, Set<String> unknownNames) {
    String left = text.replace('\u00a0', ' ');
    for (JsonNode item : kit.get("stock")) {
      left = wrapped(item.get("descriptionInInches").asText()).matcher(left).replaceAll(" ");
    }
    for (Pattern none : NO_RESULTS.values()) {
      left = none.matcher(left).replaceAll(" ");
    }
    Matcher names = NAMES.matcher(left);
    StringBuilder out = new StringBuilder();
    while (names.find()) {
      if (!known.names(names.group().replaceAll("[./-]+$", ""))) {
        unknownNames.add(names.group());
      }
      names.appendReplacement(out, " ");
    }
    return names.appendTail(out).toString();
  }

  /** How many numbers there are, and of how many it is noticed if they are a step greater. */
  private record Count(int numbers, int noticed) {}

  private static Count account(Map<String, String> texts, String what, UnitSystem units) {
    int numbers = 0;
    int noticed = 0;
    List<String> lost = new ArrayList<>();
    for (Map.Entry<String, String> sheet : texts.entrySet()) {
      JsonNumbers known = allowed(sheet.getKey(), units);
      Set<String> unknown = new HashSet<>();
      for (Printed p : Printed.in(bare(sheet.getValue(), known, unknown))) {
        numbers++;
        if (!known.has(p)) {
          lost.add(sheet.getKey() + ": " + p);
        }
        noticed += known.has(p.oneStepMore()) ? 0 : 1;
      }
      unknown.forEach(u -> lost.add(sheet.getKey() + ": the name " + u));
    }
    assertThat(lost).as(what + ": in no JSON").isEmpty();
    return new Count(numbers, noticed);
  }

  @Test
  void everyNumberOfThePdfAndOfThePageStandsInTheJsonInBothUnits() throws IOException {
    for (UnitSystem units : UnitSystem.values()) {
      Packet packet = packet(units);
      Paper paper = units == UnitSystem.METRIC ? Paper.A4 : Paper.LETTER;
      Count pdf = account(sheetsOfPdf(packet, paper), "PDF, " + units, units);
      Count page = account(sectionsOfPage(packet), "page, " + units, units);
      for (Count count : List.of(pdf, page)) {
        double noticed = (double) count.noticed() / count.numbers();
        assertThat(noticed).as(units + ": altered numbers that are noticed").isGreaterThan(0.6);
      }
      assertThat(pdf.numbers()).isGreaterThan(900);
      assertThat(page.numbers()).isGreaterThan(900);
    }
  }
}
