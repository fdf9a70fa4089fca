package org.underlee.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Rule;

/** {@code docs/explanation/the-checks.md} leaves no check out. */
class ChecksPageTest {
  private static final int POINTS = 22;

  private static String page() throws IOException {
    Path root = Path.of(System.getProperty("underlee.root", ".."));
    return Files.readString(root.resolve("docs/explanation/the-checks.md"));
  }

  @Test
  void everyRuleOfEveryCheckIsOnThePage() throws IOException {
    String page = page();
    assertThat(Checks.rules()).isNotEmpty();
    assertThat(Checks.rules())
        .extracting(Rule::id)
        .allSatisfy(id -> assertThat(page).contains("`" + id + "`"));
  }

  @Test
  void everyPointOfThePractitionersListHasItsRow() throws IOException {
    List<Integer> points =
        page()
            .lines()
            .filter(l -> l.matches("\\| \\d.*"))
            .flatMap(l -> Arrays.stream(l.split("\\|")[1].split(",")))
            .map(n -> Integer.valueOf(n.trim()))
            .toList();
    assertThat(points).containsExactlyElementsOf(IntStream.rangeClosed(1, POINTS).boxed().toList());
    assertThat(Checks.all()).hasSizeGreaterThanOrEqualTo(POINTS);
  }
}
