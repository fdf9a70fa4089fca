package org.underlee.schema;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.finding.Finding;
import org.underlee.step.StepFile;

/**
 * Public files that others made to pass or fail, against the table of {@code
 * docs/benchmarks/schema-check.md}.
 */
class SchemaCorpusTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final Path CORPUS = Path.of(System.getProperty("underlee.corpus", ""));

  /** Pass files are cut down to what their one rule is about, and lack what is not. */
  private static final Set<String> LEFT_OUT_IN_FRAGMENTS =
      Set.of("schema-missing", "schema-inverse");

  /** One line of the page: a file, whether it should pass, and what is found. */
  record Line(String file, boolean passes, String found) {
    @Override
    public String toString() {
      return file;
    }
  }

  static Stream<Line> lines() throws IOException {
    return Files.readString(ROOT.resolve("docs/benchmarks/schema-check.md"))
        .lines()
        .filter(l -> l.startsWith("| `"))
        .map(l -> List.of(l.split("\\s*\\|\\s*")))
        .map(
            c ->
                new Line(
                    c.get(1).replace("`", ""), c.get(2).equals("pass"), c.get(3).replace("`", "")));
  }

  @ParameterizedTest
  @MethodSource("lines")
  void aPublicFilePassesOrFailsAsItsAuthorsSay(Line line) {
    Path path = CORPUS.resolve("edge").resolve(line.file);
    assumeTrue(Files.isRegularFile(path), "skipped: not in the corpus: " + line.file);
    StepFile file = StepFile.read(path);
    List<Finding> findings = SchemaCheck.of(StandardSchemas.of(file.schema()), file).findings();
    if (line.passes) {
      assertThat(findings).extracting(f -> f.rule().id()).allMatch(LEFT_OUT_IN_FRAGMENTS::contains);
    } else {
      String all = findings.stream().map(Finding::message).collect(Collectors.joining("\n"));
      assertThat(all).contains(line.found);
    }
  }
}
