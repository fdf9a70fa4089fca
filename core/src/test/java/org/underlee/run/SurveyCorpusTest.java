package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.bay.Bay;
import org.underlee.finding.InputException;

/** Models of many kinds, none of them made for this program. */
class SurveyCorpusTest {
  @Test
  void everyModelEndsInASurveyOrARefusal() throws IOException {
    Path models = Path.of(System.getProperty("underlee.corpus", "."), "models");
    assumeTrue(Files.isDirectory(models), "skipped: the corpus of models is not there");
    int surveyed = 0;
    for (Path file : files(models)) {
      try {
        Survey survey = DeckRun.survey(file);
        surveyed++;
        assertThat(survey.bays()).as("%s", file).hasSize((int) survey.framing().fields().count());
        assertThat(survey.bays())
            .as("%s", file)
            .allSatisfy(f -> assertThat(f.bays()).allSatisfy(SurveyCorpusTest::isSound));
        if (survey.framing().decks().isEmpty()) {
          assertThat(survey.findings()).extracting(f -> f.rule().id()).contains("no-joists");
        }
      } catch (InputException e) {
        assertThat(e.getMessage()).as("%s", file).isNotBlank();
        assertThat(e.advice()).as("%s", file).isNotBlank();
      }
    }
    assertThat(surveyed).isPositive();
  }

  private static void isSound(Bay bay) {
    assertThat(bay.length()).isPositive();
    assertThat(bay.clearWidthAt(bay.stretch().middle())).isPositive();
    assertThat(bay.blocking()).allMatch(b -> b.at() >= 0 && b.at() <= bay.length());
  }

  private static List<Path> files(Path models) throws IOException {
    try (Stream<Path> walk = Files.walk(models)) {
      return walk.filter(f -> f.toString().endsWith(".ifc")).sorted().toList();
    }
  }
}
