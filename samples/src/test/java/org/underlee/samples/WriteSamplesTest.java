package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class WriteSamplesTest {
  private static final Path SAMPLES = Path.of(System.getProperty("underlee.root", ".."), "samples");

  static java.util.List<SampleDeck> samples() {
    return SampleDecks.all();
  }

  @ParameterizedTest(name = "{index}")
  @MethodSource("samples")
  void theCommittedFilesAreWhatTheGeneratorWrites(SampleDeck sample) throws Exception {
    Path folder = SAMPLES.resolve(sample.name());
    assertWritten(sample, folder);
    assertThat(Files.readString(folder.resolve("README.md"))).contains(sample.name() + ".ifc");
  }

  static java.util.List<HardCase> hardCases() {
    return HardCases.all();
  }

  @ParameterizedTest
  @MethodSource("hardCases")
  void theFilesOfAHardCaseAreWhatTheGeneratorWritesAndThePageNamesIt(HardCase hard)
      throws Exception {
    Path cases = SAMPLES.resolve(HardCase.FOLDER);
    assertWritten(hard.deck(), cases.resolve(hard.deck().name()));
    assertThat(Files.readString(cases.resolve("README.md"))).contains(hard.deck().name() + ".png");
  }

  private static void assertWritten(SampleDeck sample, Path folder) throws Exception {
    for (Map.Entry<String, byte[]> file : WriteSamples.files(sample).entrySet()) {
      assertThat(folder.resolve(file.getKey()))
          .as("regenerate with WriteSamples if the change is meant")
          .hasBinaryContent(file.getValue());
    }
  }
}
