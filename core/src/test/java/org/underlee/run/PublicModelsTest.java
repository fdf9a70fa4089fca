package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Role;

/**
 * Floors and roofs of public models: none is an outside deck, and joists are told from other bars
 * at least as well as {@code docs/explanation/public-models.md} says. The names are the authors'.
 */
class PublicModelsTest {
  static Stream<String> rows() throws IOException {
    try (InputStream in = PublicModelsTest.class.getResourceAsStream("public-models.tsv")) {
      String table = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      return table.lines().filter(l -> !l.startsWith("#")).toList().stream();
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rows")
  void noFloorOrRoofIsADeckAndJoistsAreToldFromOtherBars(String row) {
    String[] cells = row.split("\t");
    Path model = Path.of(System.getProperty("underlee.corpus", "."), "models", cells[0]);
    assumeTrue(Files.isRegularFile(model), "skipped: " + cells[0] + " is not there");
    Survey survey = DeckRun.survey(model);
    assertThat(survey.framing().decks()).allMatch(d -> !d.outside().value());
    Predicate<String> words = Pattern.compile(cells[1]).asPredicate();
    long called = joists(survey).filter(e -> words.test(e.name() + " " + e.typeName())).count();
    assertThat(called).isGreaterThanOrEqualTo(Long.parseLong(cells[2]));
    assertThat(joists(survey).count() - called).isLessThanOrEqualTo(Long.parseLong(cells[3]));
  }

  private static Stream<BuildingElement> joists(Survey survey) {
    return survey.framing().roles().stream()
        .filter(r -> r.role() == Role.JOIST || r.role() == Role.TRIMMER)
        .map(r -> r.member().element());
  }
}
