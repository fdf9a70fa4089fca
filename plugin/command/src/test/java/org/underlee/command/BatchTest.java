package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.command.Ran.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Folders of models as a shell sees them. */
class BatchTest {
  private static final Path SAMPLES = Path.of(System.getProperty("underlee.root", "."), "samples");

  @TempDir Path folder;
  private Path models;

  /** Two sound models at different depths, and one that is none. */
  @BeforeEach
  void copyModels() throws IOException {
    models = Files.createDirectories(folder.resolve("jobs/b")).getParent();
    Files.copy(SAMPLES.resolve("pine-deck/pine-deck.ifc"), models.resolve("b/pine.ifc"));
    Files.copy(
        SAMPLES.resolve("harbour-balcony/harbour-balcony.ifc"), models.resolve("harbour.IFC"));
    Files.writeString(models.resolve("a.ifc"), "not a model");
    Files.writeString(models.resolve("notes.txt"), "nor this");
  }

  @Test
  void eachModelHasItsRowByNameAndOneThatCannotBeReadEndsNoOthersWork() {
    Ran ran = run("batch", "survey", models);
    assertThat(ran.code()).isEqualTo(ExitCode.INPUT);
    assertThat(ran.rows()).hasSize(4);
    assertThat(ran.rows().get(1)).startsWith("jobs/a.ifc,refused,,,,").contains("a.ifc");
    assertThat(ran.rows().get(2)).startsWith("jobs/b/pine.ifc,done,1,");
    assertThat(ran.rows().get(3)).startsWith("jobs/harbour.IFC,done,");
    assertThat(ran.err()).contains("3/3 ").endsWith("3 models: 2 done, 1 without a result.\n");
  }

  @Test
  void theWordBatchMayBeLeftOutWhereAFolderFollowsTheJob() {
    Path out = folder.resolve("drained");
    for (Object[] rest :
        new Object[][] {{"survey", models}, {"design", models, "--out", out}, {"check", out}}) {
      Ran with = run(Stream.concat(Stream.of("batch"), Stream.of(rest)).toArray());
      Ran without = run(rest);
      assertThat(without.rows()).hasSizeGreaterThan(1).isEqualTo(with.rows());
      assertThat(without.code()).isEqualTo(with.code());
    }
    assertThat(run("takeoff", models).err()).contains("this is a folder");
  }

  @Test
  void aSurveyOfManyCountsWhatASurveyOfOneFinds() throws Exception {
    JsonNode one =
        new ObjectMapper().readTree(run("survey", models.resolve("b/pine.ifc"), "--json").out());
    Path table = folder.resolve("table.json");
    run("batch", "survey", models, "--summary", table);
    JsonNode row = new ObjectMapper().readTree(table.toFile()).get("models").get(0);
    assertThat(row.get("file").asText()).isEqualTo("jobs/b/pine.ifc");
    assertThat(row.get("sha256")).isEqualTo(one.get("input").get("sha256"));
    assertThat(row.get("decks").asInt()).isEqualTo(one.get("decks").size()).isPositive();
    assertThat(row.get("notes").asInt() + row.get("warnings").asInt() + row.get("errors").asInt())
        .isEqualTo(one.get("findings").size());
  }

  @Test
  void aDrainedCopyBesideItsModelIsLookedAtByCheckOnly() throws Exception {
    Files.delete(models.resolve("a.ifc"));
    Path alone = models.resolve("other.drained.ifc");
    run("design", models.resolve("b/pine.ifc"), "--out", models.resolve("b/pine.drained.ifc"));
    Files.copy(models.resolve("b/pine.drained.ifc"), alone);
    Ran surveyed = run("batch", "survey", models);
    assertThat(surveyed.out()).doesNotContain("pine.drained.ifc").contains("other.drained.ifc");
    assertThat(surveyed.err()).contains("3 models: ");
    assertThat(run("batch", "check", models).out()).contains("jobs/b/pine.drained.ifc");
  }

  @Test
  void drainedCopiesLieAsTheModelsDoAndCanBeCheckedTheSameWay() throws Exception {
    Files.delete(models.resolve("a.ifc"));
    Path out = folder.resolve("drained");
    Ran designed = run("batch", "design", models, "--out", out);
    assertThat(designed.code()).isZero();
    Path single = folder.resolve("single.ifc");
    run("design", models.resolve("b/pine.ifc"), "--out", single);
    assertThat(out.resolve("jobs/b/pine.drained.ifc")).hasSameBinaryContentAs(single);
    Ran checked = run("batch", "check", out);
    assertThat(checked.code()).isZero();
    assertThat(checked.rows().stream().skip(1).map(r -> r.split(",")[6]))
        .as("the dry fraction of what was written is that of what was designed")
        .containsExactlyElementsOf(
            designed.rows().stream().skip(1).map(r -> r.split(",")[6]).toList());
  }

  @Test
  void aRunThatWasStoppedGoesOnWhereItWas() throws Exception {
    Path journal = folder.resolve("journal");
    Ran whole = run("batch", "survey", models, "--journal", journal);
    List<String> lines = Files.readAllLines(journal);
    assertThat(lines).hasSize(3);
    String cutOff = lines.get(2).substring(0, lines.get(2).length() / 2);
    Files.writeString(journal, lines.get(0) + "\n" + lines.get(1) + "\n" + cutOff);
    Ran rest = run("batch", "survey", models, "--journal", journal);
    assertThat(rest.out()).isEqualTo(whole.out());
    assertThat(rest.err().lines().filter(l -> l.contains("(from the journal)"))).hasSize(2);
    Ran again = run("batch", "survey", models, "--journal", journal);
    assertThat(again.out()).isEqualTo(whole.out());
    assertThat(again.err().lines().filter(l -> l.contains("(from the journal)"))).hasSize(3);
  }

  @Test
  void aModelThatChangedAnotherJobOrALostCopyIsWorkedOnAgain() throws Exception {
    Files.delete(models.resolve("a.ifc"));
    Path journal = folder.resolve("journal");
    Path out = folder.resolve("drained");
    run("batch", "design", models, "--out", out, "--journal", journal);
    Files.delete(out.resolve("jobs/b/pine.drained.ifc"));
    Ran lost = run("batch", "design", models, "--out", out, "--journal", journal);
    assertThat(lost.err().lines().filter(l -> l.contains("journal"))).hasSize(1);
    assertThat(out.resolve("jobs/b/pine.drained.ifc")).exists();
    Ran steeper =
        run("batch", "design", models, "--out", out, "--journal", journal, "--fall", "1:64");
    assertThat(steeper.err()).doesNotContain("journal");
    Files.writeString(
        models.resolve("b/pine.ifc"), Files.readString(models.resolve("b/pine.ifc")) + "\n");
    Ran changed =
        run("batch", "design", models, "--out", out, "--journal", journal, "--fall", "1:64");
    assertThat(changed.err().lines().filter(l -> l.contains("journal")))
        .singleElement()
        .asString()
        .contains("harbour");
  }

  @Test
  void thePageShowsFailuresApartAndNothingOfAModelsTextAsMarkup() throws Exception {
    Files.move(models.resolve("a.ifc"), models.resolve("<b>.ifc"));
    Path page = folder.resolve("table.html");
    run("batch", "survey", models, "--summary", page);
    assertThat(Files.readString(page))
        .contains("Without a result", "jobs/&lt;b&gt;.ifc", "jobs/b/pine.ifc")
        .doesNotContain("<b>", "http");
  }

  @Test
  void whatIsNoFolderOrHasNoModelOrLacksAnOutputIsRefusedBeforeAnyWork() throws Exception {
    Path empty = Files.createDirectories(folder.resolve("empty"));
    Ran nothing = run("batch", "survey", models, empty);
    assertThat(nothing.code()).isEqualTo(ExitCode.INPUT);
    assertThat(nothing.err()).contains("empty: there is no .ifc").doesNotContain("done");
    assertThat(run("batch", "survey", folder.resolve("gone")).code()).isEqualTo(ExitCode.INPUT);
    assertThat(run("batch", "survey", models, models).err()).contains("same name in the results");
    assertThat(run("batch", "design", models).code()).isEqualTo(ExitCode.USAGE);
    assertThat(run("batch", "survey", models, "--summary", "x.txt").code())
        .isEqualTo(ExitCode.USAGE);
    assertThat(run("batch", "survey").code()).isEqualTo(ExitCode.USAGE);
  }

  @Test
  void theGravestFindingOfAnyModelDecidesTheExitCode() throws Exception {
    Files.delete(models.resolve("a.ifc"));
    Path out = folder.resolve("drained");
    assertThat(run("batch", "survey", models, "--fail-on", "note").code()).isZero();
    Ran notes = run("batch", "design", models, "--out", out, "--fail-on", "note");
    assertThat(notes.rows().stream().skip(1).map(r -> r.split(",")[7]))
        .as("one of the samples has notes")
        .anyMatch(n -> !n.equals("0"));
    assertThat(notes.code()).isEqualTo(ExitCode.FINDINGS);
  }
}
