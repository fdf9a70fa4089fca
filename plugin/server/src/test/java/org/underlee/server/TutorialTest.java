package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.command.Typed;

/** Runs the commands of the tutorial, and looks for what the page shows below them. */
@ExtendWith(WithServer.class)
class TutorialTest {
  private static final Path PAGE =
      Path.of(System.getProperty("underlee.root"), "docs", "tutorial-server.md");
  private static final String THERE = "http://models.example:8082";
  private static final String PROMPT = "$ underlee ";
  private static final String LEFT_OUT = "…";

  /** A word, or several within quotation marks. */
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  private static final Pattern MOMENT = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT[0-9:]+Z");

  @TempDir Path folder;

  /** A command, and the lines that are shown below it. */
  private record Step(String command, List<String> shown) {}

  @Test
  void thePageShowsWhatItsCommandsPrint(TestServer server) throws Exception {
    People people = new People(server.address());
    long project = people.project("Terrace", "ifc4");
    for (String person : List.of("anna@example.org", "bert@example.org")) {
      people.mayWorkIn(people.personOnce(person), project);
    }
    layOutFiles();
    List<Step> steps = steps();
    assertThat(steps).hasSizeGreaterThan(6);
    for (Step step : steps) {
      Typed ran = run(step.command, server);
      assertThat(ran.code()).as(step.command + "\n" + ran.err()).isZero();
      String printed = "\n" + plain(ran.out(), server) + "\n" + plain(ran.err(), server);
      for (String stretch : stretches(step.shown)) {
        assertThat(printed).as(step.command).contains("\n" + stretch + "\n");
      }
    }
  }

  private void layOutFiles() throws IOException {
    String deck = Files.readString(People.sample("pine-deck"));
    Files.writeString(folder.resolve("pine-deck.ifc"), deck);
    // Half an inch to the right, in feet.
    Files.writeString(
        folder.resolve("pine-deck.new.ifc"),
        deck.replace("((2.666666666667,", "((2.708333333333,"));
  }

  private static List<Step> steps() throws IOException {
    List<Step> steps = new ArrayList<>();
    boolean inside = false;
    for (String line : Files.readAllLines(PAGE)) {
      if (line.startsWith("```")) {
        inside = line.equals("```console");
      } else if (inside && line.startsWith(PROMPT)) {
        steps.add(new Step(line.substring(PROMPT.length()), new ArrayList<>()));
      } else if (inside) {
        steps.get(steps.size() - 1).shown.add(line);
      }
    }
    return steps;
  }

  /** Lines that are shown one after the other; between two stretches any may be left out. */
  private static List<String> stretches(List<String> shown) {
    List<String> all = new ArrayList<>();
    for (String stretch : String.join("\n", shown).split("(?m)^" + LEFT_OUT + "$\n?")) {
      if (!stretch.isBlank()) {
        all.add(stretch.strip());
      }
    }
    return all;
  }

  private Typed run(String command, TestServer server) {
    List<String> args = new ArrayList<>();
    Matcher words = WORD.matcher(command.replace(THERE, server.address().toString()));
    while (words.find()) {
      String word = words.group(1) == null ? words.group(2) : words.group(1);
      args.add(word.endsWith(".ifc") ? folder.resolve(word).toString() : word);
    }
    if (args.get(0).equals("server") && !args.get(1).equals("list")) {
      args.addAll(List.of("--out-dir", folder.toString()));
    }
    return Typed.run(args.toArray(String[]::new));
  }

  /** As in the reader's own folder and on his server; of an own time. */
  private String plain(String text, TestServer server) {
    String here =
        text.replace(folder + folder.getFileSystem().getSeparator(), "")
            .replace(server.address().toString(), THERE);
    return MOMENT.matcher(here).replaceAll("2026-03-02T09:00:00Z");
  }
}
