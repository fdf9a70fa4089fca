package org.underlee.ids;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;
import org.underlee.schema.StandardSchemas;
import org.underlee.step.StepFile;

/** All test cases that come with the IDS standard: pairs of a specification and a model. */
class OfficialCasesTest {
  private static final Path CASES =
      Path.of(System.getProperty("underlee.corpus", "")).resolve("schemas/ids/testcases");

  /** Whether a model fulfils a specification; one that is refused as invalid is not fulfilled. */
  private static boolean passes(Path ids) throws IOException {
    Path model = ids.resolveSibling(ids.getFileName().toString().replace(".ids", ".ifc"));
    StepFile file = StepFile.read(model);
    try {
      return IdsCheck.of(ids, StandardSchemas.of(file.schema()), file).passed();
    } catch (InputException e) {
      return false;
    }
  }

  @Test
  void everyOfficialCaseComesOutAsTheStandardSays() throws IOException {
    assumeTrue(Files.isDirectory(CASES), "skipped: no IDS test cases in the corpus");
    List<String> wrong = new ArrayList<>();
    Map<String, Integer> right = new TreeMap<>();
    try (Stream<Path> all = Files.walk(CASES)) {
      for (Path ids : all.filter(p -> p.toString().endsWith(".ids")).sorted().toList()) {
        String name = ids.getFileName().toString();
        if (passes(ids) == name.startsWith("pass-")) {
          right.merge(
              ids.getParent().getFileName() + " " + name.split("-", -1)[0], 1, Integer::sum);
        } else {
          wrong.add(CASES.relativize(ids).toString());
        }
      }
    }
    assertThat(wrong).as("right: %s", right).isEmpty();
    assertThat(right.values().stream().mapToInt(i -> i).sum()).isGreaterThan(180);
  }
}
