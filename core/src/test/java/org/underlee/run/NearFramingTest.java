package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.bay.BayFinder;
import org.underlee.bay.CrossingFinder;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.framing.Framer;
import org.underlee.framing.Framing;
import org.underlee.ifc.IfcModel;
import org.underlee.report.SurveyJson;

/** Measuring only what is near framing gives what measuring everything gives. */
class NearFramingTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** In bytes; -Dunderlee.largest asks for larger ones, which take up to a minute each. */
  private static final long LARGEST = Long.getLong("underlee.largest", 1 << 20);

  @Test
  void theSamplesComeOutTheSame() throws IOException {
    List<Path> files = models(Path.of(System.getProperty("underlee.root"), "samples"));
    assertThat(files).isNotEmpty();
    files.forEach(NearFramingTest::requireSame);
  }

  @Test
  void publicModelsComeOutTheSame() throws IOException {
    Path corpus = Path.of(System.getProperty("underlee.corpus"));
    assumeTrue(Files.isDirectory(corpus), "skipped: no public models at " + corpus);
    List<Path> files = models(corpus.toRealPath());
    assertThat(files.stream().filter(NearFramingTest::requireSame)).hasSizeGreaterThan(20);
  }

  private static List<Path> models(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(p -> p.toString().matches(".*\\.ifc(zip)?"))
          .filter(p -> p.toFile().length() <= LARGEST)
          .sorted()
          .toList();
    }
  }

  /** Whether the file is read at all. */
  private static boolean requireSame(Path file) {
    Survey near;
    try {
      near = DeckRun.survey(file);
    } catch (InputException e) {
      return false;
    }
    Survey whole = measuredWhole(near);
    ObjectNode nearJson = json(near);
    ObjectNode wholeJson = json(whole);
    // What is far from any joists and cannot be measured is of no account, and not told.
    assertThat(told(wholeJson, "notMeasured"))
        .as("%s", file)
        .containsAll(told(nearJson, "notMeasured"));
    assertThat(told(wholeJson, "findings")).as("%s", file).containsAll(told(nearJson, "findings"));
    for (ObjectNode json : List.of(nearJson, wholeJson)) {
      json.remove(List.of("notMeasured", "findings"));
    }
    assertThat(nearJson).as("%s", file).isEqualTo(wholeJson);
    return true;
  }

  /** The same survey with every element of the model measured. */
  private static Survey measuredWhole(Survey near) {
    IfcModel model = near.model();
    Framing framing = Framer.frame(model.whole());
    CrossingFinder crossings = new CrossingFinder(model.elements(), framing, List.of());
    List<FieldBays> bays = framing.fields().map(f -> BayFinder.find(f, crossings)).toList();
    List<Finding> findings = new ArrayList<>(near.model().step().findings());
    findings.addAll(model.findings());
    findings.addAll(framing.findings());
    return new Survey(
        near.source(), List.of(), model, near.request(), framing, bays, near.elements(), findings);
  }

  private static ObjectNode json(Survey survey) {
    try {
      return (ObjectNode) JSON.readTree(SurveyJson.write(survey));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static List<JsonNode> told(ObjectNode survey, String list) {
    List<JsonNode> all = new ArrayList<>();
    survey.path(list).forEach(all::add);
    // The one finding that counts what is not measured has another count where less is told.
    all.removeIf(f -> f.path("rule").asText().equals("not-measured"));
    return all;
  }
}
