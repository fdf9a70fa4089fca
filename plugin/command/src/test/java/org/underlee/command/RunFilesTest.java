package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.command.Ran.run;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** What a run reads stays as it is, and what it writes is told. */
class RunFilesTest extends AtTheShell {
  /** Options whose files are only read. */
  private static final Set<String> READ =
      Set.of(
          "--overrides",
          "--services",
          "--prices",
          "--stock",
          "--from",
          "--schema",
          "--ids",
          "--capacity-table");

  @BeforeEach
  void layOutFiles() throws Exception {
    Files.copy(SAMPLES.resolve("pine-deck/services.ifc"), folder.resolve("services.ifc"));
    assertThat(run("design", deck, "--out", folder.resolve("old.ifc")).code()).isZero();
    for (String name : List.of("kit.json", "prices.csv", "table.json", "roles.json")) {
      file(name, "the only copy");
    }
    file(
        "deck.underlee.json",
        "{\"schema\": \"underlee/overrides/1\", \"roles\": {}, \"outside\": {}}");
  }

  /** A file that an option names is an input unless the option says where to write. */
  @Test
  void everyOptionThatNamesAFileIsKnownToReadOrToWriteIt() {
    Set<String> files =
        EveryVerb.line().getSubcommands().values().stream()
            .map(CommandLine::getCommandSpec)
            .flatMap(s -> s.options().stream())
            .filter(RunFilesTest::isPath)
            .map(OptionSpec::longestName)
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(files).hasSizeGreaterThan(10);
    assertThat(files).allMatch(o -> RunFiles.TARGETS.contains(o) ^ READ.contains(o));
  }

  private static boolean isPath(OptionSpec option) {
    return Stream.concat(Stream.of(option.type()), Stream.of(option.auxiliaryTypes()))
        .anyMatch(Path.class::equals);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "design deck.ifc --out deck.ifc",
        "design deck.ifc --out deck.underlee.json",
        "design deck.ifc --services services.ifc --out services.ifc",
        "design deck.ifc --services services.ifc --out sub/../services.ifc",
        "design deck.ifc --services deck.drained.ifc",
        "design deck.ifc --services deck.ifc.bak --in-place",
        "design deck.ifc --kit kit.json --out kit.json",
        "design deck.ifc --kit kit.json --takeoff kit.json",
        "design deck.ifc --prices prices.csv --csv prices.csv",
        "design deck.ifc --stock prices.csv --takeoff prices.csv",
        "design deck.ifc --capacity-table table.json --issues table.json",
        "design deck.ifc --csv both.csv --takeoff both.csv",
        "design deck.ifc --csv deck.drained.ifc",
        "design deck.ifc --in-place --csv deck.ifc.bak",
        "takeoff deck.ifc --kit kit.json --out kit.json",
        "survey deck.ifc --overrides roles.json --json --out roles.json",
        "survey deck.ifc --services services.ifc --out services.ifc",
        "check old.ifc --services services.ifc --bcf services.ifc",
        "check old.ifc --services services.ifc --sarif old.ifc",
        "resync deck.ifc --from old.ifc --out old.ifc",
        "resync deck.ifc --from old.ifc --out new.ifc --changes old.ifc.json --kit old.ifc.json",
        "strip old.ifc --out old.ifc"
      })
  void nothingThatARunReadsIsWrittenOver(String line) throws Exception {
    Files.copy(folder.resolve("old.ifc"), folder.resolve("deck.drained.ifc"));
    Files.copy(folder.resolve("old.ifc"), folder.resolve("deck.ifc.bak"));
    Files.createDirectory(folder.resolve("sub"));
    file("old.ifc.json", "the only copy");
    Map<String, String> before = files();
    Object[] words =
        List.of(line.split(" ")).stream()
            .map(w -> w.contains(".") ? folder.resolve(w) : w)
            .toArray();
    Ran ran = run(words);
    assertThat(ran.code()).isEqualTo(ExitCode.NOT_WRITTEN);
    assertThat(ran.err()).contains(" was not written: ");
    assertThat(ran.out()).isEmpty();
    assertThat(files()).isEqualTo(before);
  }

  @Test
  void aFileThatIsReplacedIsSaidToBe() {
    Path out = folder.resolve("new.ifc");
    Path bill = folder.resolve("bill.csv");
    String fresh = run("design", deck, "--out", out, "--takeoff", bill).err();
    assertThat(fresh).contains("Wrote " + out + ": ", "Wrote " + bill + ".");
    assertThat(fresh).doesNotContain("in place of");
    String again = run("design", deck, "--out", out, "--takeoff", bill).err();
    assertThat(again).contains("Wrote " + out + " in place of the file that was there: ");
    assertThat(again).contains("Wrote " + bill + " in place of the file that was there.");
    assertThat(run("design", deck, "--in-place").err()).doesNotContain("older one");
    assertThat(run("design", deck, "--in-place").err()).contains("in place of an older one");
  }

  @Test
  void everyFileThatACheckWritesIsToldAndOneThatWasReadFirstIsRenewed() {
    Object[] words = {
      "check", folder.resolve("old.ifc"), "--issues", "i.json", "--bcf", "i.bcf", "--csv", "i.csv"
    };
    for (int i = 3; i < words.length; i += 2) {
      words[i] = folder.resolve(words[i].toString());
    }
    assertThat(run(words).err().lines().filter(l -> l.startsWith("Wrote "))).hasSize(3);
    assertThat(run(words).err().lines().filter(l -> l.startsWith("Renewed "))).hasSize(2);
  }

  @Test
  void aTableOfManyModelsIsNotWrittenOverWhatIsSaidOfOne() throws Exception {
    Map<String, String> before = files();
    Ran ran = run("batch", "survey", folder, "--summary", folder.resolve("deck.underlee.json"));
    assertThat(ran.code()).isNotZero();
    assertThat(ran.err()).contains("deck.underlee.json");
    assertThat(files()).isEqualTo(before);
  }

  /** Lines of a journal are added at its end, so that another file would grow. */
  @Test
  void aFileThatIsNoJournalIsNotWrittenTo() throws Exception {
    Map<String, String> before = files();
    Ran ran = run("batch", "survey", folder, "--journal", folder.resolve("services.ifc"));
    assertThat(ran.code()).isEqualTo(ExitCode.NOT_WRITTEN);
    assertThat(ran.err()).contains("no journal");
    assertThat(files()).isEqualTo(before);
  }
}
