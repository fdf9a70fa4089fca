package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The README's first command does what the page says, and its other ones are the program's. */
class ReadmeTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final Pattern FIRST = Pattern.compile("underlee\\.jar (design .*)");
  private static final Pattern SHOWN = Pattern.compile("```\\n(.*?)```", Pattern.DOTALL);
  private static final Pattern VERB = Pattern.compile("(?m)^    underlee (\\S+)(.*)$");

  @TempDir Path folder;

  private static String readme() throws IOException {
    return Files.readString(ROOT.resolve("README.md"));
  }

  @Test
  void whatTheFirstCommandPrintsIsShown() throws IOException {
    Matcher command = FIRST.matcher(readme());
    Matcher shown = SHOWN.matcher(readme());
    assertThat(command.find() && shown.find()).isTrue();
    String[] words =
        command
            .group(1)
            .replace("samples/", ROOT.resolve("samples") + "/")
            .replace("pine-deck.drained.ifc", folder.resolve("pine-deck.drained.ifc").toString())
            .replace("pine-deck.png", folder.resolve("pine-deck.png").toString())
            .split(" ");
    StringWriter printed = new StringWriter();
    PrintWriter out = new PrintWriter(printed);
    assertThat(Underlee.run(out, out, words)).isZero();
    List<String> pieces =
        Stream.of(shown.group(1).split("[\\n…]"))
            .map(String::strip)
            .filter(p -> !p.isEmpty())
            .toList();
    assertThat(pieces).hasSizeGreaterThan(5);
    assertThat(printed.toString().replace(folder + "/", "")).containsSubsequence(pieces);
  }

  @Test
  void everyCommandOfTheThreeWaysIsOneOfTheProgramsWithItsOptions() throws IOException {
    String reference = Files.readString(ROOT.resolve("docs/reference/command.md"));
    List<String> verbs = VERB.matcher(readme()).results().map(m -> m.group(1)).toList();
    assertThat(verbs).hasSize(15);
    for (Matcher m = VERB.matcher(readme()); m.find(); ) {
      assertThat(reference).contains("Usage: underlee " + m.group(1));
      String usage = reference.substring(reference.indexOf("Usage: underlee " + m.group(1)));
      for (String word : m.group(2).replaceAll("#.*", "").split(" +")) {
        assertThat(usage).contains(word.startsWith("--") ? word : "");
      }
    }
  }
}
