package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.command.Ran.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The survey as a shell sees it. */
class SurveyVerbTest extends AtTheShell {
  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void aSurveyOfASampleIsCleanAndItsJsonIsAllThatIsOnStdout(String sample) throws Exception {
    Ran ran = run("survey", SAMPLES.resolve(sample + "/" + sample + ".ifc"), "--json");
    assertThat(ran.code()).isZero();
    assertThat(ran.json().get("schema").asText()).isEqualTo("underlee/survey/1");
    assertThat(ran.json().get("decks")).isNotEmpty();
    assertThat(ran.out()).startsWith("{").endsWith("}\n");
    assertThat(ran.err()).doesNotContain("{");
  }

  @Test
  void textGoesToStdoutInTheUnitsThatAreAskedFor() {
    assertThat(run("survey", deck, "--units", "metric").out()).contains("349 mm");
    assertThat(run("survey", deck, "--units", "imperial").out()).contains("1' 1 3/4\"");
    // the sample is drawn in feet
    assertThat(run("survey", deck).out())
        .isEqualTo(run("survey", deck, "--units", "imperial").out());
  }

  @Test
  void aSurveyOfOneDeckHasNeitherFieldsNorRolesOfAnother() throws Exception {
    Path terrace = SAMPLES.resolve("hillside-terrace/hillside-terrace.ifc");
    JsonNode all = run("survey", terrace, "--json").json();
    JsonNode one = run("survey", terrace, "--json", "--deck", "deck-1").json();
    JsonNode two = run("survey", terrace, "--json", "--deck", "deck-2").json();
    assertThat(one.get("decks")).hasSize(1);
    assertThat(one.get("decks").get(0)).isEqualTo(all.get("decks").get(0));
    assertThat(members(one)).isNotEmpty().doesNotContainAnyElementsOf(members(two));
    assertThat(one.get("roles").size() + two.get("roles").size())
        .isEqualTo(all.get("roles").size());
  }

  private static List<String> members(JsonNode survey) {
    return survey.get("roles").findValuesAsText("member");
  }

  @Test
  void surveyOfOneDeckLeavesTheOthersOut() {
    assertThat(run("survey", deck, "--deck", "deck-1").out()).contains("deck-1/field-1");
  }

  @Test
  void anOutputThatIsThereIsReplaced() throws Exception {
    Path out = file("out.json", "old");
    assertThat(run("survey", deck, "--json", "--out", out).code()).isZero();
    assertThat(Files.readString(out)).isEqualTo(run("survey", deck, "--json").out());
  }

  @Test
  void theHighLineIsPutAtALengthAndWhatIsNoLengthIsAMistakeOfUsage() throws Exception {
    Path free = SAMPLES.resolve("hard-cases/both-ways/both-ways.ifc");
    Ran put = run("survey", free, "--json", "--both-ways", "deck-1/field-1@7' 2 5/8\"");
    JsonNode line = put.json().at("/decks/0/fields/0/highLine");
    assertThat(line.get("beside").asText()).isEqualTo("deck-1/field-2");
    assertThat(line.get("atMm").asDouble()).isEqualTo(2200.275);
    assertThat(line.get("asked").asBoolean()).isTrue();
    Ran slip = run("survey", free, "--both-ways", "deck-1/field-1@half way");
    assertThat(slip.code()).isEqualTo(2);
    assertThat(slip.err()).contains("\"half way\" is not a length; write it like 7' 9 1/2\"");
    Ran near = run("survey", free, "--both-ways", "deck-1/field-1@1.1m", "--fail-on", "error");
    assertThat(near.code()).isEqualTo(ExitCode.FINDINGS);
    assertThat(near.err())
        .contains("high-line-not-there")
        .contains("in B2 something stands from")
        .contains("Try: --both-ways deck-1/field-1@");
  }
}
