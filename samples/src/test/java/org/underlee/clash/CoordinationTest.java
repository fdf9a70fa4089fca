package org.underlee.clash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.clash.Tracked.Status;
import org.underlee.finding.InputException;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.report.CheckJson;
import org.underlee.report.ClashCsv;
import org.underlee.report.ClashJson;
import org.underlee.report.ClashSarif;
import org.underlee.run.Coordination;
import org.underlee.run.DeckRun;
import org.underlee.run.SurveyRequest;
import org.underlee.units.LengthText;
import org.underlee.units.Lengths.UnitSystem;

/** What is found of invented services below the pine deck. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class CoordinationTest {
  private Path folder;
  private Path drained;
  private Coordination found;

  @BeforeAll
  void lookOnce(@TempDir Path temporary) throws IOException {
    folder = temporary;
    drained = PineIssues.drained(folder);
    found = PineIssues.of(drained, IssueRegister.EMPTY, PineIssues.SERVICES);
  }

  private Tracked issue(String name) {
    return found.issues().stream().filter(t -> t.title().contains(name)).findFirst().orElseThrow();
  }

  /** Sixty pairs are five things to do: the pipe that all bays meet is one. */
  @Test
  void whatIsFoundIsGroupedByCauseAndRanked() {
    assertThat(found.issues())
        .extracting(Tracked::cause)
        .containsExactly(
            Cause.INTERSECT, Cause.INTERSECT, Cause.HIDDEN, Cause.HIDDEN, Cause.TOO_NEAR);
    assertThat(found.found().clashes()).hasSizeGreaterThan(50);
    assertThat(issue("Cold water").issue().orElseThrow().clashes())
        .extracting(c -> c.part().bay())
        .contains("deck-1/field-1/B1", "deck-1/field-1/B7", "deck-1/field-1/B12");
    assertThat(found.found().examined()).isLessThan(found.found().pairs() / 10);
  }

  /** The pipe's top is at 92.6 in + 21 mm, 100 in from the ledger: the generator drew it so. */
  @Test
  void theDepthIsThatOfTheDrawing() {
    Clash worst =
        issue("Cold water").issue().orElseThrow().clashes().stream()
            .filter(c -> c.part().kind() == PartKind.SIDE_RAIL)
            .findFirst()
            .orElseThrow();
    Mesh part = worst.part().shape();
    double from = part.bounds().min().y();
    // from the high end down: the low end has a drip, which hangs lower than the fall says
    double underside = lowest(part, from) - (100 * 0.0254 - from) / 96;
    assertThat(worst.measured()).isTrue();
    assertThat(worst.amount()).isCloseTo(92.6 * 0.0254 + 0.021 - underside, within(0.0008));
  }

  private static double lowest(Mesh mesh, double y) {
    return java.util.stream.IntStream.range(0, mesh.vertexCount())
        .mapToObj(mesh::vertex)
        .filter(p -> Math.abs(p.y() - y) < 0.02)
        .mapToDouble(Vec3::z)
        .min()
        .orElseThrow();
  }

  @Test
  void everyWayOutThatIsTypedWorks() throws IOException {
    Tracked stack = issue("Soil stack");
    assertThat(stack.ways()).extracting(w -> w.what().toString()).contains("leave B5 open");
    assertThat(stack.ways().get(0).typed())
        .hasValueSatisfying(o -> assertThat(o).startsWith("--services "));
    assertThat(stack.ways().get(0).what().toString())
        .as("until then nothing can be laid out at all")
        .endsWith(
            "once the issue with the pipe \"Cold water 42 mm\" #110 in services.ifc is settled");
    assertThat(partsAround(PineIssues.SERVICES)).isZero();
    assertThat(partsAround(without("Cold water"))).isPositive();
    assertThat(issue("Shut-off valve").ways().get(0).what().toString())
        .startsWith("make deck-1/field-1/B3/pan-1 removable");
  }

  private Path without(String name) throws IOException {
    String text = Files.readString(PineIssues.SERVICES);
    String line = text.lines().filter(l -> l.contains(name)).findFirst().orElseThrow();
    String id = line.substring(0, line.indexOf('='));
    String rest =
        text.replace(line + "\n", "")
            .replaceAll("\\(" + id + ",", "(")
            .replace("," + id + ",", ",");
    return Files.writeString(folder.resolve("without.ifc"), rest);
  }

  private static int partsAround(Path services) {
    SurveyRequest request =
        new SurveyRequest(Optional.empty(), Optional.empty(), List.of(services));
    return DeckRun.design(
            DeckRun.survey(PineIssues.SAMPLE.resolve("pine-deck.ifc"), request),
            Scope.OUTSIDE,
            KitReader.builtIn())
        .layout()
        .parts()
        .size();
  }

  @Test
  void aThingThatIsMovedAsToldIsNoIssueAnyLonger() throws IOException {
    WayOut move = issue("Cold water").ways().get(0);
    // as it is shown, not as it was reckoned
    String shown = move.what().in(UnitSystem.METRIC);
    double down = LengthText.parse(shown.replaceAll(".*?(\\d+ mm).*", "$1"));
    String text = Files.readString(PineIssues.SERVICES);
    String z = String.format(Locale.ROOT, "%.4f", 92.6 * 25.4);
    assertThat(text).contains(z);
    Path moved =
        Files.writeString(
            folder.resolve("moved.ifc"),
            text.replace(z, String.format(Locale.ROOT, "%.4f", 92.6 * 25.4 - down * 1000)));
    assertThat(PineIssues.of(drained, IssueRegister.EMPTY, moved).issues())
        .extracting(Tracked::title)
        .noneMatch(t -> t.contains("Cold water"));
  }

  @Test
  void anAssemblyLaidOutAroundTheOwnPipeHasNoIssue() {
    assertThat(PineIssues.of(drained, IssueRegister.EMPTY).issues()).isEmpty();
  }

  @Test
  void issuesAreFollowedFromRunToRun() throws IOException {
    IssueRegister first = IssueRegister.read(ClashJson.write(found.register()), "issues.json");
    assertThat(found.issues()).extracting(Tracked::status).containsOnly(Status.NEW);
    String accepted =
        ClashJson.write(first)
            .replaceFirst("\"accepted\" : \"\"", "\"accepted\" : \"moved on site\"");
    String text = Files.readString(PineIssues.SERVICES);
    Path fewer =
        Files.writeString(
            folder.resolve("services.ifc"),
            text.lines()
                .filter(l -> !l.contains("Dryer vent"))
                .collect(Collectors.joining("\n"))
                .replaceFirst(",#\\d+\\),#13\\)", "),#13)"));
    Coordination second =
        PineIssues.of(drained, IssueRegister.read(accepted, "issues.json"), fewer);
    assertThat(second.issues())
        .extracting(Tracked::status)
        .containsExactly(Status.ACCEPTED, Status.OPEN, Status.OPEN, Status.OPEN, Status.GONE);
    assertThat(second.hasNew()).isFalse();
    assertThat(second.issues().get(0).reason()).contains("moved on site");
    assertThat(second.issues()).extracting(Tracked::id).containsAll(ids(found));
    Coordination third = PineIssues.of(drained, second.register(), PineIssues.SERVICES);
    assertThat(third.issues())
        .extracting(Tracked::status)
        .containsExactly(Status.ACCEPTED, Status.OPEN, Status.OPEN, Status.OPEN, Status.NEW);
  }

  private static List<String> ids(Coordination of) {
    return of.issues().stream().map(Tracked::id).toList();
  }

  @Test
  void aFileOfIssuesThatIsNoneIsRefusedWithTheWord() {
    String text = ClashJson.write(found.register());
    assertThatThrownBy(() -> IssueRegister.read(text.replace("intersect", "collide"), "i.json"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("\"collide\"");
  }

  /** SARIF 2.1.0, section 3.30: a region in bytes holds just what it is about. */
  @Test
  void theBytesOfAResultAreThoseOfTheThing() throws IOException {
    var root = new com.fasterxml.jackson.databind.ObjectMapper().readTree(ClashSarif.write(found));
    assertThat(root.at("/version").asText()).isEqualTo("2.1.0");
    byte[] services = Files.readAllBytes(PineIssues.SERVICES);
    byte[] deck = Files.readAllBytes(drained);
    int checked = 0;
    for (var result : root.at("/runs/0/results")) {
      assertThat(result.get("baselineState").asText()).isEqualTo("new");
      for (String list : List.of("locations", "relatedLocations")) {
        for (var location : result.get(list)) {
          var place = location.get("physicalLocation");
          byte[] file =
              place.at("/artifactLocation/uri").asText().equals("services.ifc") ? services : deck;
          int from = place.at("/region/byteOffset").asInt();
          int length = place.at("/region/byteLength").asInt();
          String text = new String(file, from, length, StandardCharsets.ISO_8859_1);
          String id = location.at("/logicalLocations/0/name").asText();
          assertThat(text).startsWith("#").contains(id);
          checked++;
        }
      }
    }
    assertThat(checked).isGreaterThan(60);
  }

  @Test
  void theTableHasARowForEachPair() {
    String csv = ClashCsv.write(found);
    assertThat(csv.split("\r\n")).hasSize(1 + found.found().clashes().size());
    assertThat(csv).contains(",services.ifc,").contains("Cold water 42 mm");
  }

  @Test
  void theReportIsAsExpected() throws IOException {
    assertExpected(
        "check-services.json", CheckJson.write(found.checked(), java.util.Optional.of(found)));
    assertExpected("check-services.csv", ClashCsv.write(found));
  }

  private void assertExpected(String name, String text) throws IOException {
    String own =
        text.replace(PineIssues.SERVICES.toString(), "services.ifc")
            .replace(found.checked().survey().source().sha256(), "that of the drained model");
    Path file = PineIssues.SAMPLE.resolve("expected").resolve(name);
    if (Boolean.getBoolean("underlee.rewrite")) {
      Files.writeString(file, own);
    }
    assertThat(own).isEqualTo(Files.readString(file));
  }
}
