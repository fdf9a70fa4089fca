package org.underlee;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** One word for one thing: what {@code docs/reference/words.md} says not to say is not said. */
class OneVoiceTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final Path WORDS = ROOT.resolve("docs/reference/words.md");

  /** The last cell of a row of three. */
  private static final Pattern ROW = Pattern.compile("(?m)^\\|[^|\n]*\\|[^|\n]*\\|([^|\n]*)\\|$");

  private static final Pattern BLOCK_COMMENT = Pattern.compile("(?s)/\\*.*?\\*/");
  private static final Pattern LITERAL = Pattern.compile("\"((?:\\\\.|[^\"\\\\\n])*)\"");
  private static final Pattern CODE = Pattern.compile("(?s)```.*?```|`[^`\n]*`");

  /** Shorter texts are names, or words that members of models are recognised by. */
  private static final int WORDS_OF_A_SENTENCE = 3;

  @Test
  void noPageAndNoMessageHasAnotherWordForAThing() throws IOException {
    Pattern others = others(Files.readString(WORDS));
    List<String> said = new ArrayList<>();
    int read = 0;
    for (Path file : texts()) {
      read++;
      String own = told(file, Files.readString(file));
      others.matcher(own).results().forEach(m -> said.add(file + ": " + m.group()));
    }
    assertThat(read).isGreaterThan(500);
    assertThat(said).isEmpty();
  }

  @Test
  void anotherWordIsNoticedInAPageAndInAMessageAndNotInCode() {
    Pattern others = others("| elbow | a bend | shoe, downspout boot |\n");
    String page = "The shoes are not a `shoe`.";
    assertThat(found(others, told(Path.of("a.md"), page))).containsExactly("shoes");
    String code = "/* a shoe */ String a = \"set the downspout boot below it\" + \"shoe\";";
    assertThat(found(others, told(Path.of("A.java"), code))).containsExactly("downspout boot");
    assertThat(others(read(WORDS)).matcher("a bearing line").find()).isTrue();
  }

  private static List<String> found(Pattern others, String text) {
    return others.matcher(text).results().map(MatchResult::group).toList();
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What the table's last column has, in one or in many. */
  private static Pattern others(String table) {
    String all =
        ROW.matcher(table)
            .results()
            .flatMap(m -> Arrays.stream(m.group(1).split(",")))
            .map(String::strip)
            .filter(w -> !w.isEmpty() && !w.equals("not") && !w.startsWith("-"))
            .map(Pattern::quote)
            .collect(Collectors.joining("|"));
    return Pattern.compile("(?i)\\b(?:" + all + ")(?:s|es)?\\b");
  }

  /** What a file tells people: a page without its code, the sentences in a source file. */
  private static String told(Path file, String text) {
    if (!file.toString().endsWith(".java")) {
      return CODE.matcher(text).replaceAll(" ");
    }
    return LITERAL
        .matcher(BLOCK_COMMENT.matcher(text).replaceAll(" "))
        .results()
        .map(m -> m.group(1))
        .filter(t -> t.split(" ").length >= WORDS_OF_A_SENTENCE)
        .collect(Collectors.joining("\n"));
  }

  private static List<Path> texts() throws IOException {
    List<Path> files = new ArrayList<>(List.of(ROOT.resolve("README.md")));
    for (String folder : List.of("docs", "core/src/main", "plugin", "samples")) {
      try (Stream<Path> walk = Files.walk(ROOT.resolve(folder))) {
        walk.filter(OneVoiceTest::isRead).forEach(files::add);
      }
    }
    return files;
  }

  private static boolean isRead(Path file) {
    String name = file.toString().replace('\\', '/');
    boolean ours = !name.contains("/target/") && !name.contains("node_modules");
    boolean told =
        name.endsWith(".md")
            || name.endsWith("phrases.properties")
            || (name.endsWith(".java") && name.contains("/src/main/"));
    return ours && told && !file.equals(WORDS);
  }
}
