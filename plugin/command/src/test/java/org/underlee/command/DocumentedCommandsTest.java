package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Runs the commands of the tutorial and the how-to pages ({@code console} blocks) and looks for
 * what the pages show below them. A line {@code …} stands for any lines.
 */
class DocumentedCommandsTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final String PROMPT = "$ ";
  private static final String DRAINED = "pine-deck.drained.ifc";
  private static final String LEFT_OUT = "…";

  /** Lines that make the files that a page speaks of. */
  private static final Pattern MADE = Pattern.compile("(sed|cp|mkdir) ");

  /** Feet, inches and parts of them as a page writes them. */
  private static final Pattern MEASURE =
      Pattern.compile("(?:\\d+' )?\\d+(?: \\d+/\\d+)?\"|\\d+[.]\\d+ in\\b");

  /** One design for all pages. */
  @TempDir static Path once;

  @TempDir Path folder;

  @BeforeAll
  static void drain() {
    Path deck = ROOT.resolve("samples/pine-deck/pine-deck.ifc");
    Path drained = once.resolve(DRAINED);
    assertThat(Ran.run("design", deck, "--out", drained).code()).isZero();
  }

  /** A command, and what the page says that it prints. */
  private record Step(String command, List<String> shown) {}

  /** The first stretch of shown lines that is in neither stream. */
  private static Optional<String> missing(Ran ran, List<String> shown) {
    List<String> stretch = new ArrayList<>();
    for (String line : Stream.concat(shown.stream(), Stream.of(LEFT_OUT)).toList()) {
      if (!line.equals(LEFT_OUT)) {
        stretch.add(line);
        continue;
      }
      String text = "\n" + String.join("\n", stretch) + "\n";
      boolean there = ("\n" + ran.out()).contains(text) || ("\n" + ran.err()).contains(text);
      if (!stretch.isEmpty() && !there) {
        return Optional.of(text);
      }
      stretch.clear();
    }
    return Optional.empty();
  }

  static Stream<String> pages() {
    return Stream.of(
        "tutorial.md",
        "tutorial-builder.md",
        "tutorial-coordinator.md",
        "how-to/use-your-own-kit.md",
        "how-to/rate-by-your-own-tables.md",
        "how-to/choose-between-arrangements.md",
        "how-to/read-findings.md",
        "how-to/ask-why.md",
        "how-to/look-before-you-start.md",
        "how-to/hand-over-quantities.md",
        "how-to/replace-or-remove-the-assembly.md",
        "how-to/a-new-export-came.md",
        "how-to/many-models.md",
        "how-to/check-by-the-standard.md",
        "how-to/bad-files.md",
        "how-to/look-at-the-services.md",
        "how-to/my-joists-are-not-found.md",
        "how-to/two-units.md",
        "how-to/a-pipe-moved.md",
        "how-to/use-it-in-ci.md");
  }

  @ParameterizedTest
  @MethodSource("pages")
  void aPageShowsWhatItsCommandsPrint(String page) throws IOException {
    layOutFiles();
    ShellLines shell = new ShellLines(ROOT, folder);
    String text = Files.readString(ROOT.resolve("docs").resolve(page));
    if (text.contains(PROMPT + "underlee design") && text.contains("--out " + DRAINED)) {
      Files.delete(folder.resolve(DRAINED)); // the page makes it, where there is none yet
    }
    List<Step> steps = steps(text);
    assertThat(steps).isNotEmpty();
    Ran last = new Ran(0, "", "");
    for (Step step : steps) {
      if (shell.run(step.command)) {
        continue;
      }
      if (step.command.equals("echo $?")) {
        assertThat(step.shown).containsExactly(Integer.toString(last.code()));
      } else {
        last = run(step.command);
        assertThat(missing(last, step.shown)).as(step.command).isEmpty();
      }
    }
  }

  /** The example of the page. */
  private void table() throws IOException {
    String page = Files.readString(ROOT.resolve("docs/how-to/rate-by-your-own-tables.md"));
    String json = page.substring(page.indexOf("```json") + 8);
    Files.writeString(folder.resolve("our-county.json"), json.substring(0, json.indexOf("```")));
  }

  /** The sum that the tutorial does by hand is the program's, number by number. */
  @Test
  void everyNumberThatTheTutorialChecksByHandIsPrinted() throws IOException {
    layOutFiles();
    String page = Files.readString(ROOT.resolve("docs/tutorial.md"));
    String sum = page.substring(page.indexOf("Check one by hand"), page.indexOf("\nB6 has three"));
    String printed =
        run("underlee takeoff pine-deck.ifc").out()
            + run("underlee design pine-deck.ifc").out()
            + run("underlee design pine-deck.ifc --explain F1-B1-P1").out()
            + run("underlee design pine-deck.ifc --explain F1-B1-R1").out();
    List<String> measures = MEASURE.matcher(sum).results().map(MatchResult::group).toList();
    assertThat(measures).hasSizeGreaterThan(7);
    assertThat(measures)
        .allSatisfy(m -> assertThat(printed).containsPattern("(?<![\\d'] ?)" + Pattern.quote(m)));
  }

  @Test
  void whatTheSamplesPageSaysOfTheDesignIsWhatIsPrinted() throws IOException {
    layOutFiles();
    String page = Files.readString(ROOT.resolve("samples/pine-deck/README.md"));
    Ran ran = run("underlee design pine-deck.ifc --units metric");
    for (String said : List.of("longest run 3067 mm", "last 514 mm of the bays, out to the rim")) {
      assertThat(page).contains(said);
      assertThat(ran.out() + ran.err()).contains(said);
    }
  }

  @Test
  void aShownLineThatIsNotPrintedIsNoticed() throws IOException {
    layOutFiles();
    Ran ran = run("underlee survey pine-deck.ifc");
    assertThat(missing(ran, List.of("pine-deck.ifc: IFC4, unit of length foot", LEFT_OUT)))
        .isEmpty();
    assertThat(missing(ran, List.of("pine-deck.ifc: IFC4, unit of length foot", "B1")))
        .hasValueSatisfying(m -> assertThat(m).contains("B1"));
    assertThat(missing(ran, List.of("IFC4, unit of length foot"))).isPresent();
  }

  private static List<Step> steps(String page) {
    List<Step> steps = new ArrayList<>();
    boolean inside = false;
    boolean plain = false;
    for (String line : page.lines().toList()) {
      if (line.startsWith("```")) {
        inside = line.equals("```console");
        plain = line.equals("```sh");
      } else if (plain && MADE.matcher(line).lookingAt()) {
        steps.add(new Step(line, new ArrayList<>()));
      } else if (inside && line.startsWith(PROMPT)) {
        steps.add(new Step(line.substring(PROMPT.length()), new ArrayList<>()));
      } else if (inside) {
        steps.get(steps.size() - 1).shown.add(line);
      }
    }
    return steps;
  }

  private Ran run(String command) {
    List<String> words = List.of(command.split(" "));
    assertThat(words.get(0)).isEqualTo("underlee");
    Ran ran =
        Ran.run(
            words.stream()
                .skip(1)
                .<Object>map(w -> w.contains(".") || w.endsWith("/") ? folder.resolve(w) : w)
                .toArray());
    return new Ran(ran.code(), asInFolder(ran.out()), asInFolder(ran.err()));
  }

  private String asInFolder(String text) {
    return text.replace("\r\n", "\n").replace(folder + folder.getFileSystem().getSeparator(), "");
  }

  /** The files that the pages speak of. */
  private void layOutFiles() throws IOException {
    for (String name : List.of("pine-deck", "harbour-balcony", "hillside-terrace")) {
      Path given = ROOT.resolve("samples").resolve(name).resolve(name + ".ifc");
      Path kept = folder.resolve("samples").resolve(name).resolve(name + ".ifc");
      Files.createDirectories(kept.getParent());
      Files.copy(given, kept);
      Files.copy(given, folder.resolve(name + ".ifc"));
    }
    String services = Files.readString(ROOT.resolve("samples/pine-deck/services.ifc"));
    Files.writeString(folder.resolve("services.ifc"), services);
    String deck = Files.readString(folder.resolve("pine-deck.ifc"));
    Files.writeString(folder.resolve("cut.ifc"), deck.substring(0, 30_000));
    drainedFiles();
    kits();
    table();
    try (InputStream schema = Underlee.class.getResourceAsStream("/schema/IFC4_ADD2.exp")) {
      Files.write(folder.resolve("IFC4.exp"), schema.readAllBytes());
    }
  }

  private void drainedFiles() throws IOException {
    Files.copy(once.resolve(DRAINED), folder.resolve(DRAINED));
  }

  private void kits() throws IOException {
    String builtIn =
        Files.readString(
            ROOT.resolve("core/src/main/resources/org/underlee/kit/formed-aluminium.json"));
    Files.writeString(
        folder.resolve("my-kit.json"),
        builtIn.replace("Site-formed coated aluminium pans", "Our shop's pans"));
  }
}
