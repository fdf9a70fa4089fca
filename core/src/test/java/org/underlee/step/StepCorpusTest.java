package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;

/** Every model of the corpus, when it is there. */
class StepCorpusTest {
  private static List<Path> files(String folder) throws IOException {
    Path root = Path.of(System.getProperty("underlee.corpus", "")).resolve(folder);
    assumeTrue(Files.isDirectory(root), "skipped: no corpus folder " + folder);
    try (Stream<Path> walk = Files.walk(root)) {
      return walk.filter(f -> f.toString().matches(".*\\.(ifc|ifczip)")).sorted().toList();
    }
  }

  @Test
  void everyModelIsIndexedAndEveryInstanceDecoded() throws IOException {
    for (Path path : files("models")) {
      if (path.toString().endsWith(".ifc")) {
        StepFile file = StepFile.read(path);
        long[] ids = new long[file.count()];
        for (int i = 0; i < ids.length; i++) {
          ids[i] = file.decode(i).id();
          assertThat(file.find(ids[i])).isEqualTo(i);
        }
        assertThat(ids).as("%s", path).isNotEmpty();
        assertThat(
                new String(
                    file.bytes(),
                    file.blockOffset(),
                    7,
                    java.nio.charset.StandardCharsets.US_ASCII))
            .isEqualTo("ENDSEC;");
      }
    }
  }

  @Test
  void everyOddFileIsReadOrRefusedWithAPlace() throws IOException {
    int refused = 0;
    for (Path path : files("edge")) {
      try {
        StepFile file = StepFile.read(path);
        for (int i = 0; i < file.count(); i++) {
          file.decode(i).values();
        }
      } catch (InputException e) {
        refused++;
        assertThat(e.place().file()).contains(path.getFileName().toString());
        assertThat(e.advice()).isNotBlank();
      }
    }
    assertThat(refused).as("the folder has deliberately broken files").isPositive();
  }

  /** What is written is the given bytes with a block in one place; nothing of ours moves. */
  @Test
  void splicingNothingGivesTheSameBytes() throws IOException {
    int same = 0;
    long bytes = 0;
    for (String folder : List.of("models", "edge")) {
      for (Path path : files(folder)) {
        try {
          StepFile file = StepFile.read(path);
          byte[] spliced = StepSplice.insert(file, new byte[0]);
          String given = file.zipped() ? Sha256.hex(file.bytes()) : Sha256.hex(path);
          assertThat(Sha256.hex(spliced)).as("%s", path).isEqualTo(given);
          same++;
          bytes += spliced.length;
        } catch (InputException e) {
          assertThat(e.advice()).as("%s", path).isNotBlank();
        }
      }
    }
    System.out.println(same + " files of " + bytes + " bytes came back the same");
    assertThat(same).isPositive();
  }
}
