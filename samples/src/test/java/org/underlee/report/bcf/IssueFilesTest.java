package org.underlee.report.bcf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.clash.Clash;
import org.underlee.clash.IssueRegister;
import org.underlee.clash.PineIssues;
import org.underlee.clash.Tracked;
import org.underlee.report.ClashSarif;
import org.underlee.run.Coordination;
import org.underlee.samples.NodeScripts;

/**
 * The pine deck's issues as programs read them that are not ours: npm {@code @parametricos/bcf-js}
 * 0.2.6, and the schema of SARIF 2.1.0 (rtm.5) of npm {@code @microsoft/jest-sarif}.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class IssueFilesTest {
  private Coordination found;
  private final List<JsonNode> read = new ArrayList<>();

  @BeforeAll
  void writeAndReadOnce(@TempDir Path folder) throws IOException, InterruptedException {
    assumeTrue(NodeScripts.available(), NodeScripts.SKIPPED);
    found = PineIssues.of(PineIssues.drained(folder), IssueRegister.EMPTY, PineIssues.SERVICES);
    StringBuilder files = new StringBuilder();
    for (BcfVersion version : BcfVersion.values()) {
      Path bcf = folder.resolve(version.id() + ".bcf");
      Files.write(bcf, BcfWriter.write(found, version));
      files.append(version.id()).append('\t').append(bcf).append('\n');
    }
    String sarif = ClashSarif.write(found);
    for (String log : List.of(sarif, sarif.replace("\"level\"", "\"levl\""))) {
      Path file = Files.writeString(Files.createTempFile(folder, "issues", ".sarif"), log);
      files.append("sarif\t").append(file).append('\n');
    }
    ObjectMapper json = new ObjectMapper();
    String told =
        NodeScripts.in("node-issues").run(List.of("node", "issues.mjs"), files.toString());
    for (String line : told.split("\n")) {
      read.add(json.readTree(line));
    }
  }

  @Test
  void everyEditionOfBcfIsReadWithItsTopicsAndWhatTheyPointAt() {
    for (int edition = 0; edition < BcfVersion.values().length; edition++) {
      JsonNode topics = read.get(edition);
      assertThat(topics).hasSameSizeAs(found.issues());
      for (Tracked issue : found.issues()) {
        JsonNode topic = topicOf(topics, issue);
        assertThat(topic.at("/topic/topic_status").asText()).isEqualTo("Open");
        assertThat(topic.at("/topic/labels/0").asText()).isEqualTo(issue.cause().word());
        assertThat(topic.at("/topic/description").asText()).contains(issue.title());
        JsonNode selection = topic.at("/viewpoints/0/components/selection");
        assertThat(selection.findValuesAsText("ifc_guid"))
            .doesNotHaveDuplicates()
            .containsAll(pointedAt(issue));
      }
    }
  }

  private static JsonNode topicOf(JsonNode topics, Tracked issue) {
    for (JsonNode topic : topics) {
      if (topic.at("/topic/title").asText().equals(issue.title())) {
        return topic;
      }
    }
    throw new AssertionError("no topic of " + issue.title());
  }

  /** GlobalIds of the things in the way. */
  private static List<String> pointedAt(Tracked issue) {
    return issue.issue().orElseThrow().clashes().stream()
        .map(Clash::thing)
        .map(t -> t.element().globalId())
        .distinct()
        .toList();
  }

  @Test
  void theLogKeepsToTheSchemaOfSarifAndASlipInItDoesNot() {
    assertThat(read.get(read.size() - 2)).isEmpty();
    assertThat(read.get(read.size() - 1)).isNotEmpty();
  }
}
