package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.command.Ran.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The verbs as a shell sees them: exit codes, both streams and the files left behind. */
class UnderleeTest {
  private static final Path SAMPLES = Path.of(System.getProperty("underlee.root", "."), "samples");

  /** A project without anything in it. */
  private static final String BARE =
      """
      ISO-10303-21;
      HEADER;
      FILE_DESCRIPTION((''),'2;1');
      FILE_NAME('','',(''),(''),'','','');
      FILE_SCHEMA(('%s'));
      ENDSEC;
      DATA;
      #1=IFCPROJECT('0000000000000000000001',$,'p',$,$,$,$,$,#2);
      #2=IFCUNITASSIGNMENT((#3));
      #3=IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.);
      ENDSEC;
      END-ISO-10303-21;
      """;

  @TempDir Path folder;
  private Path deck;

  @BeforeEach
  void copyTheSample() throws IOException {
    deck = folder.resolve("deck.ifc");
    Files.copy(SAMPLES.resolve("pine-deck/pine-deck.ifc"), deck);
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private Path bare() throws IOException {
    return file("bare.ifc", BARE.formatted("IFC4"));
  }

  private static String sha256(Path file) throws Exception {
    return HexFormat.of()
        .formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
  }

  /** Every file of the folder with its hash. */
  private Map<String, String> files() throws Exception {
    Map<String, String> all = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      for (Path f : walk.filter(Files::isRegularFile).toList()) {
        all.put(folder.relativize(f).toString(), sha256(f));
      }
    }
    return all;
  }

  /** A slab of 4.8 m by 3.6 m, 30 mm thick, top at 3 m; the water goes as the user says. */
  private static final String SLAB =
      BARE.replace("$,$,$,$,#2)", "$,$,$,(#11),#2)")
          .replace(
              "ENDSEC;\nEND-ISO",
              """
              #10=IFCCARTESIANPOINT((0.,0.,0.));
              #11=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#12,$);
              #12=IFCAXIS2PLACEMENT3D(#10,$,$);
              #13=IFCDIRECTION((0.,0.,1.));
              #20=IFCCARTESIANPOINT((2.4,1.8,2.97));
              #21=IFCAXIS2PLACEMENT3D(#20,$,$);
              #22=IFCLOCALPLACEMENT($,#21);
              #23=IFCRECTANGLEPROFILEDEF(.AREA.,$,$,4.8,3.6);
              #24=IFCEXTRUDEDAREASOLID(#23,$,#13,0.03);
              #25=IFCSHAPEREPRESENTATION(#11,'Body','SweptSolid',(#24));
              #26=IFCPRODUCTDEFINITIONSHAPE($,$,(#25));
              #27=IFCSLAB('0000000000000000000002',$,'Deck',$,$,#22,#26,$,$);
              ENDSEC;
              END-ISO""")
          .formatted("IFC4");

  @Test
  void framingThatIsAssumedUnderASlabIsSaidToBeSoEverywhereAndNeverWritten() throws Exception {
    Path slab = file("slab.ifc", SLAB);
    Path drained = folder.resolve("drained.ifc");
    String joists = "joists=2x10@16in,direction=90";
    Ran survey = run("survey", slab, "--assume", joists, "--json");
    assertThat(survey.json().at("/decks/0/fields/0/assumed").asBoolean()).isTrue();
    assertThat(survey.json().at("/decks/0/fields/0/bays")).hasSize(12);
    assertThat(survey.json().at("/findings/0/rule").asText()).isEqualTo("framing-assumed");
    Ran design = run("design", slab, "--assume", joists, "--out", drained);
    assertThat(design.code()).isZero();
    assertThat(design.err()).contains("framing-assumed").contains("Wrote");
    String written = Files.readString(drained);
    assertThat(written).contains("'AssumedFraming',$,IFCTEXT('" + joists + "')");
    assertThat(written).doesNotContain("IFCBEAM");
    assertThat(run("strip", drained, "--out", folder.resolve("back.ifc")).code()).isZero();
    assertThat(sha256(folder.resolve("back.ifc"))).isEqualTo(sha256(slab));
  }

  @Test
  void whatTheUserSetsRightBesideTheModelIsFollowedByEveryVerb() throws Exception {
    String joist = run("survey", deck, "--json").json().at("/roles/0/member").asText();
    String overrides =
        """
        {"schema": "underlee/overrides/1", "roles": {}, "outside": {"%s": false}}
        """;
    file("deck.underlee.json", overrides.formatted(joist));
    Ran survey = run("survey", deck, "--json");
    assertThat(survey.json().at("/overrides/file").asText()).isEqualTo("deck.underlee.json");
    assertThat(survey.json().at("/decks/0/outside/value").asBoolean()).isFalse();
    assertThat(run("survey", deck).out())
        .contains("deck.underlee.json: 1 element set right by you");
    Ran design = run("design", deck, "--out", folder.resolve("drained.ifc"));
    assertThat(design.err()).contains("is left out: the overrides file says so");
    Path other = file("other.json", overrides.formatted("gone"));
    assertThat(run("survey", deck, "--overrides", other).err()).contains("override-stale (gone)");
  }

  /** A pipe of 60 mm by 60 mm through the slab's place, in millimetres and another schema. */
  private static String services(double x) {
    return BARE.replace("$,$,$,$,#2)", "$,$,$,(#11),#2)")
        .replace(".LENGTHUNIT.,$,", ".LENGTHUNIT.,.MILLI.,")
        .replace(
            "ENDSEC;\nEND-ISO",
            """
            #10=IFCCARTESIANPOINT((0.,0.,0.));
            #11=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#12,$);
            #12=IFCAXIS2PLACEMENT3D(#10,$,$);
            #13=IFCDIRECTION((0.,0.,1.));
            #20=IFCCARTESIANPOINT((%s,1000.,2000.));
            #21=IFCAXIS2PLACEMENT3D(#20,$,$);
            #22=IFCLOCALPLACEMENT($,#21);
            #23=IFCRECTANGLEPROFILEDEF(.AREA.,$,$,60.,60.);
            #24=IFCEXTRUDEDAREASOLID(#23,$,#13,1500.);
            #25=IFCSHAPEREPRESENTATION(#11,'Body','SweptSolid',(#24));
            #26=IFCPRODUCTDEFINITIONSHAPE($,$,(#25));
            #27=IFCFLOWSEGMENT('0000000000000000000009',$,'Riser',$,$,#22,#26,$);
            ENDSEC;
            END-ISO"""
                .formatted(x))
        .formatted("IFC2X3");
  }

  @Test
  void whatCrossesABayMayStandInAnotherModelWithAnotherUnit() throws Exception {
    Path slab = file("slab.ifc", SLAB);
    Path here = file("pipes.ifc", services(1000));
    Path far = file("far.ifc", services(1e6));
    Ran ran =
        run(
            "survey",
            slab,
            "--assume",
            "joists=2x10@16in,direction=90",
            "--json",
            "--services",
            here,
            far);
    assertThat(ran.json().at("/services/0/file").asText()).isEqualTo("pipes.ifc");
    assertThat(ran.json().at("/services/0/lengthUnit").asText()).isEqualTo("MILLIMETRE");
    JsonNode crossing = ran.json().at("/decks/0/fields/0/bays/2/crossings/0");
    assertThat(crossing.get("file").asText()).isEqualTo("pipes.ifc");
    assertThat(crossing.get("ifcClass").asText()).isEqualTo("IfcFlowSegment");
    assertThat(crossing.get("way").asText()).isEqualTo("through");
    assertThat(crossing.get("sizeMm").asDouble()).isEqualTo(60);
    assertThat(ran.err()).contains("warning services-elsewhere (far.ifc)");
    assertThat(ran.out().split("\"element\"", -1)).hasSize(2);
  }

  /** As check says it of the same model; the file of issues is the same too. */
  @Test
  void aDesignSaysWhatIsStillInItsWay() throws Exception {
    // The water pipe lower than it is drawn: where it is, no pan can be hung.
    String drawn = Files.readString(SAMPLES.resolve("pine-deck/services.ifc"));
    Path services = file("services.ifc", drawn.replace("2352.0400", "2252.0400"));
    Path out = folder.resolve("around.ifc");
    Path own = folder.resolve("design-issues.json");
    Path checks = folder.resolve("check-issues.json");
    Ran design =
        run(
            "design",
            deck,
            "--services",
            services,
            "--out",
            out,
            "--issues",
            own,
            "--write-interferences");
    assertThat(design.code()).isZero();
    assertThat(design.err()).contains("Wrote 0 interferences; ");
    Ran check = run("check", out, "--services", services, "--issues", checks);
    String issues = check.out().substring(check.out().indexOf(" parts against "));
    assertThat(design.out()).contains(issues);
    assertThat(own).hasSameTextualContentAs(checks);
    assertThat(issues).contains("pairs examined");
  }

  @Test
  void framingThatCannotBeAssumedIsAMistakeOfUsageOrOfTheModel() throws Exception {
    Path slab = file("slab.ifc", SLAB);
    Ran size = run("survey", slab, "--assume", "joists=2x11@16in");
    assertThat(size.code()).isEqualTo(2);
    assertThat(size.err()).contains("\"2x11\" is no size of lumber known here");
    Ran way = run("survey", slab, "--assume", "joists=2x10@16in");
    assertThat(way.code()).isEqualTo(3);
    assertThat(way.err()).contains("#27").contains("direction=90");
  }

  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void aSurveyOfASampleIsCleanAndItsJsonIsAllThatIsOnStdout(String sample) throws Exception {
    Ran ran = run("survey", SAMPLES.resolve(sample + "/" + sample + ".ifc"), "--json");
    assertThat(ran.code()).isZero();
    assertThat(ran.json().get("schema").asText()).isEqualTo("underlee/survey/1");
    assertThat(ran.json().get("decks")).isNotEmpty();
    assertThat(ran.out()).startsWith("{").endsWith("}\n");
    assertThat(ran.err()).doesNotContain("{");
  }

  @Test
  void textGoesToStdoutInTheUnitsThatAreAskedFor() {
    assertThat(run("survey", deck, "--units", "metric").out()).contains("349 mm");
    assertThat(run("survey", deck, "--units", "imperial").out()).contains("1' 1 3/4\"");
    // the sample is drawn in feet
    assertThat(run("survey", deck).out())
        .isEqualTo(run("survey", deck, "--units", "imperial").out());
  }

  @ParameterizedTest
  @ValueSource(strings = {"survey", "design", "takeoff"})
  void anUnknownDeckIsAUsageErrorThatNamesTheDecksThereAre(String verb) {
    Path terrace = SAMPLES.resolve("hillside-terrace/hillside-terrace.ifc");
    List<Object> args = new ArrayList<>(List.of(verb, terrace, "--deck", "deck-7"));
    if (verb.equals("design")) {
      args.addAll(List.of("--out", folder.resolve("never.ifc")));
    }
    Ran ran = run(args.toArray());
    assertThat(ran.code()).isEqualTo(2);
    assertThat(ran.err()).contains("--deck deck-7: the model has deck-1, deck-2");
    assertThat(folder.resolve("never.ifc")).doesNotExist();
  }

  @Test
  void anyDeckIsUnknownWhereNoneWasFound() throws Exception {
    Ran ran = run("survey", bare(), "--deck", "deck-1");
    assertThat(ran.code()).isEqualTo(2);
    assertThat(ran.err()).contains("no deck was found in the model");
  }

  @Test
  void aSurveyOfOneDeckHasNeitherFieldsNorRolesOfAnother() throws Exception {
    Path terrace = SAMPLES.resolve("hillside-terrace/hillside-terrace.ifc");
    JsonNode all = run("survey", terrace, "--json").json();
    JsonNode one = run("survey", terrace, "--json", "--deck", "deck-1").json();
    JsonNode two = run("survey", terrace, "--json", "--deck", "deck-2").json();
    assertThat(one.get("decks")).hasSize(1);
    assertThat(one.get("decks").get(0)).isEqualTo(all.get("decks").get(0));
    assertThat(members(one)).isNotEmpty().doesNotContainAnyElementsOf(members(two));
    assertThat(one.get("roles").size() + two.get("roles").size())
        .isEqualTo(all.get("roles").size());
  }

  private static List<String> members(JsonNode survey) {
    return survey.get("roles").findValuesAsText("member");
  }

  @ParameterizedTest
  @CsvSource({"note,1", "warning,1", "error,0", "WARNING,1"})
  void findingsAtOrAboveTheLevelEndWithOne(String level, int code) throws Exception {
    Ran ran = run("survey", bare(), "--json", "--fail-on", level);
    assertThat(ran.code()).isEqualTo(code);
    assertThat(ran.json().get("decks")).isEmpty();
    assertThat(ran.json().get("findings").get(0).get("rule").asText()).isEqualTo("no-joists");
    assertThat(ran.err()).contains("no-joists");
  }

  @Test
  void findingsWithoutALevelToFailOnEndWithZero() throws Exception {
    assertThat(run("survey", bare()).code()).isZero();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "paint",
        "survey",
        "survey DECK --fail-on loud",
        "survey DECK --units cubits",
        "survey DECK --no-such-option",
        "survey DECK --picture picture.gif",
        "survey DECK another.ifc",
        "design DECK --takeoff takeoff.txt",
        "design DECK --picture picture.gif",
        "design DECK --view inside",
        "strip DECK"
      })
  void wrongUsageEndsWithTwoAndNothingIsWritten(String line) throws Exception {
    Map<String, String> before = files();
    Ran ran =
        line.isEmpty() ? run() : run((Object[]) line.replace("DECK", deck.toString()).split(" "));
    assertThat(ran.code()).isEqualTo(2);
    assertThat(ran.err()).isNotBlank();
    assertThat(ran.out()).isEmpty();
    assertThat(files()).isEqualTo(before);
  }

  @Test
  void helpAndVersionAreNoMistake() {
    assertThat(run("--help").code()).isZero();
    assertThat(run("--help").out()).contains("survey", "design", "takeoff", "strip");
    assertThat(run("design", "--help").out()).contains("--takeoff");
    assertThat(run("--version").out()).startsWith("underlee 0.");
  }

  private void assertRefused(Ran ran, String... words) throws Exception {
    assertThat(ran.code()).isEqualTo(3);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err()).contains(words).doesNotContain("\tat ");
  }

  @Test
  void anAssemblyWhoseMarksAreGoneIsReplacedAndStripped() throws Exception {
    Path drained = folder.resolve("drained.ifc");
    run("design", deck, "--out", drained);
    String text = Files.readString(drained);
    Path bare = file("bare.ifc", text.replaceAll("/\\* Underlee.*?\\*/\\r?\\n", ""));
    Path again = folder.resolve("again.ifc");
    assertThat(run("design", bare, "--out", again).code()).isZero();
    assertThat(Files.readString(again)).isEqualTo(text);
    Path stripped = folder.resolve("stripped.ifc");
    assertThat(run("strip", bare, "--out", stripped).code()).isZero();
    assertThat(stripped).hasSameBinaryContentAs(deck);
  }

  @Test
  void outputThatCannotBePrintedToItsEndIsNoSuccess() {
    Writer full =
        new Writer() {
          @Override
          public void write(char[] text, int from, int length) throws IOException {
            throw new IOException("no space left");
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    StringWriter said = new StringWriter();
    int code =
        Underlee.run(new PrintWriter(full), new PrintWriter(said), "survey", deck.toString());
    assertThat(code).isEqualTo(4);
    assertThat(said.toString()).contains("could not be written to its end");
  }

  @Test
  void surveyOfOneDeckLeavesTheOthersOut() {
    assertThat(run("survey", deck, "--deck", "deck-1").out()).contains("deck-1/field-1");
  }

  @ParameterizedTest
  @ValueSource(strings = {"survey", "design", "takeoff"})
  void aModelThatCannotBeReadEndsWithThree(String verb) throws Exception {
    Path text = file("note.ifc", "Dear builder, the deck is 16 ft wide.");
    Path nothing = file("nothing.ifc", "");
    Path unknown = file("unknown.ifc", BARE.formatted("IFC99"));
    Path cut = file("cut.ifc", Files.readString(deck).substring(0, 20_000));
    Map<String, String> before = files();
    assertRefused(run(verb, folder.resolve("missing.ifc")), "missing.ifc", "no such file");
    assertRefused(run(verb, folder), "a folder");
    assertRefused(run(verb, text), "note.ifc");
    assertRefused(run(verb, nothing), "nothing.ifc");
    assertRefused(run(verb, unknown), "IFC99");
    assertRefused(run(verb, cut), "cut.ifc");
    assertThat(files()).isEqualTo(before);
  }

  @Test
  void aKitOrAssemblyThatIsNotThereEndsWithThree() throws Exception {
    Map<String, String> before = files();
    assertRefused(run("takeoff", deck, "--kit", "tin"), "tin", "formed-aluminium");
    Path kit = file("kit.json", "{}");
    before.put("kit.json", sha256(kit));
    assertRefused(run("design", deck, "--kit", kit), "kit.json");
    assertRefused(run("strip", deck, "--out", folder.resolve("out.ifc")), "no assembly");
    assertThat(files()).isEqualTo(before);
  }

  @Test
  void anOutputThatCannotBeWrittenEndsWithFourAndLeavesNothingBehind() throws Exception {
    Path nowhere = folder.resolve("no/such/folder/out.ifc");
    Path taken = Files.createDirectory(folder.resolve("taken"));
    Map<String, String> before = files();
    for (Path target : List.of(nowhere, taken, deck)) {
      for (Object[] line :
          new Object[][] {
            {"design", deck, "--out", target},
            {"survey", deck, "--out", target},
            {"takeoff", deck, "--out", target}
          }) {
        Ran ran = run(line);
        assertThat(ran.code()).as("%s to %s", line[0], target).isEqualTo(4);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).isNotBlank().doesNotContain("\tat ");
        assertThat(files()).isEqualTo(before);
      }
    }
    assertThat(nowhere.getParent()).doesNotExist();
  }

  @Test
  void designWritesBesideTheModelAndLeavesTheModelAlone() throws Exception {
    String original = sha256(deck);
    Ran ran = run("design", deck, "--json");
    assertThat(ran.code()).isZero();
    assertThat(ran.json().get("schema").asText()).isEqualTo("underlee/design/1");
    assertThat(ran.json().get("parts")).isNotEmpty();
    assertThat(ran.err()).contains("deck.drained.ifc");
    assertThat(files()).containsOnlyKeys("deck.ifc", "deck.drained.ifc");
    assertThat(sha256(deck)).isEqualTo(original);
  }

  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void stripGivesTheDesignersFileBack(String sample) throws Exception {
    Path model = SAMPLES.resolve(sample + "/" + sample + ".ifc");
    Path drained = folder.resolve("drained.ifc");
    Path back = folder.resolve("back.ifc");
    String original = sha256(model);
    assertThat(run("design", model, "--out", drained).code()).isZero();
    assertThat(sha256(drained)).isNotEqualTo(original);
    Ran strip = run("strip", drained, "--out", back);
    assertThat(strip.code()).isZero();
    assertThat(strip.out()).isEmpty();
    assertThat(sha256(back)).isEqualTo(original);
    assertThat(sha256(model)).isEqualTo(original);
  }

  @Test
  void designingADrainedModelGivesWhatTheOriginalGives() throws Exception {
    Path once = folder.resolve("once.ifc");
    Path twice = folder.resolve("twice.ifc");
    Ran first = run("design", deck, "--out", once, "--json");
    Ran second = run("design", once, "--out", twice, "--json");
    assertThat(second.code()).isZero();
    assertThat(sha256(twice)).isEqualTo(sha256(once));
    assertThat(second.json().get("parts")).isEqualTo(first.json().get("parts"));
  }

  @Test
  void anOutputThatIsThereIsReplaced() throws Exception {
    Path out = file("out.json", "old");
    assertThat(run("survey", deck, "--json", "--out", out).code()).isZero();
    assertThat(Files.readString(out)).isEqualTo(run("survey", deck, "--json").out());
  }

  @Test
  void takeoffsAndPicturesAreWrittenByTheirEnding() throws Exception {
    Path csv = folder.resolve("buy.csv");
    Path json = folder.resolve("buy.json");
    Path svg = folder.resolve("plan.svg");
    Path png = folder.resolve("view.png");
    assertThat(run("takeoff", deck, "--out", csv).code()).isZero();
    assertThat(run("takeoff", deck, "--out", json).code()).isZero();
    assertThat(Files.readString(csv)).startsWith("row,item,");
    assertThat(Files.readString(json)).isEqualTo(run("takeoff", deck, "--json").out());
    assertThat(run("takeoff", deck).out()).contains("To buy");
    Ran ran = run("design", deck, "--takeoff", folder.resolve("again.csv"), "--picture", svg);
    assertThat(ran.code()).isZero();
    assertThat(Files.readString(folder.resolve("again.csv"))).isEqualTo(Files.readString(csv));
    assertThat(Files.readString(svg)).contains("<svg", "B1");
    assertThat(run("survey", deck, "--picture", png).code()).isZero();
    assertThat(new String(Files.readAllBytes(png), 1, 3, StandardCharsets.US_ASCII))
        .isEqualTo("PNG");
  }

  @Test
  void aPartIsExplainedInTheUnitsThatAreAskedForAndNothingIsWritten() throws Exception {
    Ran imperial = run("design", deck, "--explain", "F1-B1-P1", "--units", "imperial");
    assertThat(imperial.code()).isZero();
    assertThat(imperial.out()).contains("clear run of bay B1", "kit railEndGapMm: common practice");
    assertThat(imperial.out()).contains("1.00 in").doesNotContainPattern("\\d mm");
    assertThat(imperial.err()).isEmpty();
    Ran metric = run("design", deck, "--explain", "deck-1/field-1/B1/pan-1", "--units", "metric");
    assertThat(metric.out()).contains("25.4 mm").doesNotContain(" in  ");
    JsonNode part =
        run("design", deck, "--explain", "F1-B1-P1", "--json").json().at("/parts/0/dimensions");
    assertThat(part.findValuesAsText("dimension")).contains("length", "flat-width", "seat-high");
    assertThat(Files.exists(folder.resolve("deck.drained.ifc"))).isFalse();
  }

  @Test
  void aNameThatSeveralPartsShareListsThemAndAnUnknownOneNamesTheNearest() throws Exception {
    Ran several = run("design", deck, "--explain", "F1-B1-R");
    assertThat(several.out().lines()).hasSize(2).allMatch(l -> l.startsWith("F1-B1-R"));
    Ran none = run("design", deck, "--explain", "F1-B1-Q1");
    assertThat(none.code()).isEqualTo(2);
    assertThat(none.err()).contains("no part is called so").contains("F1-B1-P1");
  }

  /** A kit's own descriptions of what is bought are the kit's words, and are left as they are. */
  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void whoAsksForFeetAndInchesSeesNoMillimetres(String sample) throws Exception {
    Path model = SAMPLES.resolve(sample).resolve(sample + ".ifc");
    Path out = folder.resolve("imperial.ifc");
    Ran ran = run("design", model, "--units", "imperial", "--checklist", "--out", out);
    String bought = ran.out().substring(ran.out().indexOf("To buy"), ran.out().indexOf("To cut"));
    assertThat(ran.out().replace(bought, "") + ran.err())
        .contains("1:96", "net-fall-low")
        .doesNotContainPattern("\\d ?mm\\b");
  }

  @Test
  void aLimitIsNamedWhenAModelExceedsItAndCanBeWidened() throws IOException {
    Ran refused = run("survey", bare(), "--record-limit", "2");
    assertThat(refused.code()).isEqualTo(ExitCode.INPUT);
    assertThat(refused.err()).contains("more than 2 instances", "--record-limit");
    assertThat(run("survey", bare(), "--record-limit", "3").code()).isEqualTo(ExitCode.CLEAN);
    assertThat(run("survey", bare(), "--zip-ratio-limit", "0").code()).isEqualTo(ExitCode.USAGE);
    Path archive = folder.resolve("zeros.ifczip");
    try (var zip = new java.util.zip.ZipOutputStream(Files.newOutputStream(archive))) {
      zip.putNextEntry(new java.util.zip.ZipEntry("zeros.ifc"));
      zip.write(
          (BARE.formatted("IFC4") + "/*" + "0".repeat(1 << 20) + "*/")
              .getBytes(StandardCharsets.UTF_8));
    }
    assertThat(run("survey", archive).err()).contains("100 times its size", "--zip-ratio-limit");
    assertThat(run("survey", archive, "--zip-ratio-limit", "2000").code())
        .isEqualTo(ExitCode.CLEAN);
  }
}
