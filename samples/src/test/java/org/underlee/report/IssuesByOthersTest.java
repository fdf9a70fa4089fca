package org.underlee.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.underlee.clash.IssueRegister;
import org.underlee.clash.PineIssues;
import org.underlee.clash.Tracked;
import org.underlee.report.bcf.BcfVersion;
import org.underlee.report.bcf.BcfWriter;
import org.underlee.run.Coordination;
import org.underlee.samples.NodeHome;

/**
 * Issues as others read them: BCF with the npm package {@code @parametricos/bcf-js}, SARIF with its
 * own schema.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class IssuesByOthersTest {
  private static final NodeHome NODE =
      new NodeHome("src/test/node/issues", "issues-witness", "judge.mjs");

  private Coordination found;
  private Path folder;
  private JsonNode said;

  @BeforeAll
  void askOnce(@TempDir Path temporary) throws IOException, InterruptedException {
    assumeTrue(NodeHome.isAvailable(), NodeHome.SKIPPED);
    folder = temporary;
    found = PineIssues.of(PineIssues.drained(folder), IssueRegister.EMPTY, PineIssues.SERVICES);
    for (BcfVersion version : BcfVersion.values()) {
      Files.write(bcf(version), BcfWriter.write(found, version));
    }
    String sarif = ClashSarif.write(found);
    Files.writeString(folder.resolve("first.sarif"), sarif);
    Coordination second =
        PineIssues.of(folder.resolve("pine-deck.drained.ifc"), found.register(), services());
    Files.writeString(folder.resolve("second.sarif"), ClashSarif.write(second));
    Files.writeString(
        folder.resolve("broken.sarif"), sarif.replaceFirst("\"byteOffset\" : ", "$0-9"));
    List<String> files = new ArrayList<>();
    try (var all = Files.list(folder)) {
      all.map(Path::toString).filter(f -> f.matches(".*\\.(bcf..|sarif)")).forEach(files::add);
    }
    Path home = NODE.installed();
    Path list = Files.writeString(folder.resolve("files.txt"), String.join("\n", files));
    said = new ObjectMapper().readTree(NodeHome.run(home, List.of("node", NODE.script()), list));
  }

  /** Without the dryer vent, so that an issue is gone. */
  private Path services() throws IOException {
    String text = Files.readString(PineIssues.SERVICES);
    StringBuilder fewer = new StringBuilder();
    text.lines().filter(l -> !l.contains("Dryer vent")).forEach(l -> fewer.append(l).append('\n'));
    return Files.writeString(
        folder.resolve("services.ifc"),
        fewer.toString().replaceFirst(",#\\d+\\),#13\\)", "),#13)"));
  }

  private Path bcf(BcfVersion version) {
    return folder.resolve("issues.bcf" + version.id().replace(".", ""));
  }

  @ParameterizedTest
  @EnumSource
  void anotherReaderFindsEachTopicWithItsThingsCameraAndPicture(BcfVersion version) {
    JsonNode topics = said.get(bcf(version).toString());
    assertThat(topics).hasSameSizeAs(found.issues());
    for (JsonNode topic : topics) {
      Tracked issue =
          found.issues().stream()
              .filter(t -> t.id().equals(topic.get("guid").asText()))
              .findFirst()
              .orElseThrow();
      assertThat(topic.get("title").asText()).isEqualTo(issue.title());
      assertThat(topic.get("status").asText()).isEqualTo("Open");
      Set<String> selected = new HashSet<>();
      topic.get("selection").forEach(s -> selected.add(s.asText()));
      issue
          .issue()
          .orElseThrow()
          .things()
          .forEach(t -> assertThat(selected).contains(t.element().globalId()));
      assertThat(topic.get("camera")).hasSize(3);
      assertThat(topic.get("picture").asText()).isEqualTo("PNG");
    }
  }

  @Test
  void theStandardsSchemaHasNothingAgainstTheLog() {
    for (String name : List.of("first.sarif", "second.sarif")) {
      assertThat(said.get(folder.resolve(name).toString())).as(name).isEmpty();
    }
  }

  @Test
  void theStandardsSchemaSeesASlip() {
    assertThat(said.get(folder.resolve("broken.sarif").toString()).toString())
        .contains("byteOffset should be >= -1");
  }
}
