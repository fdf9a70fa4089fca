package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.command.Ran.run;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What all verbs have in common, as a shell sees it: exit codes, streams, nothing left behind. */
class UnderleeTest extends AtTheShell {
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
        "design DECK --explain F1-B6-P2 --takeoff bill.csv",
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
    assertThat(run("--version").out())
        .containsPattern(
            "^underlee 0\\.\\d+\\.\\d+, built from ([0-9a-f]{7,40}|unknown)( with changes)?\\R");
  }

  private void assertRefused(Ran ran, String... words) throws Exception {
    assertThat(ran.code()).isEqualTo(3);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err()).contains(words).doesNotContain("\tat ");
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

  @ParameterizedTest
  @ValueSource(strings = {"survey", "design", "takeoff"})
  void aModelThatCannotBeReadEndsWithThree(String verb) throws Exception {
    Path text = file("note.ifc", "Dear builder, the deck is 16 ft wide.");
    Path nothing = file("nothing.ifc", "");
    Path unknown = file("unknown.ifc", BARE.formatted("IFC99"));
    Path cut = file("cut.ifc", Files.readString(deck).substring(0, 20_000));
    Map<String, String> before = files();
    assertRefused(run(verb, folder.resolve("missing.ifc")), "missing.ifc", "no such file");
    assertRefused(run("takeoff", folder), "a folder", "underlee survey " + folder);
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
    Path nowhere = folder.resolve("no/such/folder/out.csv");
    Path taken = Files.createDirectory(folder.resolve("taken.csv"));
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
        assertThat(ran.err()).contains(target + " was not written: ").doesNotContain("\tat ");
        assertThat(files()).isEqualTo(before);
      }
    }
    assertThat(nowhere.getParent()).doesNotExist();
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
