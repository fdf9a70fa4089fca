package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;
import org.underlee.step.StepFile;

/** Every model of the corpus, when it is there. */
class IfcCorpusTest {
  private static Path folder(String name) {
    Path root = Path.of(System.getProperty("underlee.corpus", "")).resolve(name);
    assumeTrue(Files.isDirectory(root), "skipped: no corpus folder " + name);
    return root;
  }

  private static List<Path> files(String folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder(folder))) {
      return walk.filter(f -> f.toString().endsWith(".ifc")).sorted().toList();
    }
  }

  @Test
  void everyModelIsReadAndWhatIsNotMeasuredSaysWhy() throws IOException {
    int elements = 0;
    int notMeasured = 0;
    for (Path path : files("models")) {
      IfcModel model = IfcModel.of(StepFile.read(path));
      elements += model.elements().size();
      notMeasured += model.notMeasured().size();
      assertThat(model.notMeasured()).as("%s", path).noneMatch(n -> n.why().isBlank());
      assertThat(model.elements()).as("%s", path).noneMatch(e -> e.shape().isEmpty());
    }
    // Counted on the corpus of 48 models; fewer means that something stopped being read.
    assertThat(elements).isGreaterThanOrEqualTo(20_643);
    assertThat(notMeasured).isLessThanOrEqualTo(103);
  }

  @Test
  void oddFilesGiveNothingWorseThanARefusal() throws IOException {
    int read = 0;
    for (Path path : files("edge")) {
      try {
        IfcModel model = IfcModel.of(StepFile.read(path));
        read += model.elements().size();
        assertThat(model.notMeasured()).as("%s", path).noneMatch(n -> n.why().isBlank());
      } catch (InputException e) {
        assertThat(e.advice()).isNotBlank();
      }
    }
    assertThat(read).isPositive();
  }

  /** The corpus notes say: 148 joists, in feet. */
  @Test
  void theTimberHouseHasItsJoists() {
    IfcModel model =
        IfcModel.of(
            StepFile.read(folder("models").resolve("autotimber/home-2floor_structure.ifc")));
    assertThat(model.units().lengthName()).isEqualTo("FOOT");
    assertThat(model.elements().stream().filter(e -> e.predefinedType().equals("JOIST")).count())
        .isEqualTo(148);
    assertThat(model.notMeasured()).isEmpty();
  }
}
