package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
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

  /** All but the window; the standard's schema file is the reader's own. */
  @Test
  void everyLineOfTheThreeWaysWorksAfterTheLinesAboveIt() throws IOException {
    try (InputStream schema = Underlee.class.getResourceAsStream("/schema/IFC4_ADD2.exp")) {
      Files.write(folder.resolve("IFC4.exp"), schema.readAllBytes());
    }
    ShellLines shell = new ShellLines(ROOT, folder);
    String ways = readme().substring(readme().indexOf("## Three ways"));
    int run = 0;
    for (String line : ways.lines().filter(l -> l.startsWith("    ")).toList()) {
      String command = line.strip().replaceAll(" +#.*", "");
      if (command.startsWith("underlee ") && !command.startsWith("underlee open")) {
        Object[] words =
            Stream.of(command.split(" +"))
                .skip(1)
                .<Object>map(w -> w.matches(".*[.][a-z]\\w+") ? folder.resolve(w) : w)
                .toArray();
        if (command.endsWith("--out packet")) {
          words[words.length - 1] = folder.resolve("packet");
        }
        assertThat(Ran.run(words).code()).as(command).isZero();
        run++;
      } else {
        shell.run(command);
      }
    }
    assertThat(run).isEqualTo(14);
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
