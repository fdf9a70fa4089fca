package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;
import org.underlee.ifc.IfcModel;

/** Damaged models give a result or a declared error, and nothing else. */
class FuzzTest {
  /** More can be asked for with {@code -Dunderlee.mutants}; a million were tried once. */
  private static final long MUTANTS = Long.getLong("underlee.mutants", 1500);

  private static List<Path> samples() throws IOException {
    return Fuzz.smallModels(Path.of(System.getProperty("underlee.root")).resolve("samples"));
  }

  @Test
  void aDamagedSampleIsReadOrRefusedInTime() throws IOException {
    Fuzz fuzz = new Fuzz(samples());
    assertThat(fuzz.faults(0, MUTANTS)).isEmpty();
    assertThat(fuzz.read()).isGreaterThan((int) (MUTANTS / 5));
    assertThat(fuzz.refused()).isGreaterThan((int) (MUTANTS / 5));
  }

  @Test
  void everyKindOfDamageChangesASampleAndTheSameSeedGivesTheSameDamage() throws IOException {
    String text = Files.readString(samples().get(0), StandardCharsets.ISO_8859_1);
    Set<Mutation> idle = EnumSet.allOf(Mutation.class);
    for (Mutation mutation : Mutation.values()) {
      for (int seed = 0; seed < 20; seed++) {
        String damaged = mutation.of(text, new Random(seed));
        assertThat(mutation.of(text, new Random(seed))).isEqualTo(damaged);
        if (!damaged.equals(text)) {
          idle.remove(mutation);
        }
      }
    }
    assertThat(idle).isEmpty();
    assertThat(Mutation.values()).hasSizeGreaterThanOrEqualTo(15);
  }

  /** Found as seed 1682: lengths that overflow gave a bar without a direction. */
  @Test
  void coordinatesNearTheLargestNumberAreNoFault() throws IOException {
    Fuzz fuzz = new Fuzz(samples());
    assertThat(fuzz.faults(1682, 1)).isEmpty();
  }

  @Test
  void aModelCutOffAnywhereIsRefusedUntilOnlyTheTrailerIsMissing() throws IOException {
    byte[] model = Files.readAllBytes(samples().get(0));
    assertThat(model.length).isLessThan(64 << 10);
    int complete = new String(model, StandardCharsets.ISO_8859_1).lastIndexOf("ENDSEC;") + 7;
    int read = 0;
    for (int end = 0; end < model.length; end++) {
      try {
        StepFile file = StepFile.of(Arrays.copyOf(model, end), "cut.ifc");
        assertThat(end).isGreaterThanOrEqualTo(complete);
        assertThat(IfcModel.of(file).elements()).isNotEmpty();
        read++;
      } catch (InputException e) {
        assertThat(end).as(e.getMessage()).isLessThan(complete);
        assertThat(e.advice()).isNotBlank();
      }
    }
    assertThat(read).isPositive();
  }

  @Test
  void readingAndSplicingNothingGivesBackTheSameBytes() throws IOException {
    Path corpus = Path.of(System.getProperty("underlee.corpus"));
    int same = 0;
    try (Stream<Path> ours = Files.walk(Path.of(System.getProperty("underlee.root"), "samples"));
        Stream<Path> others = Files.isDirectory(corpus) ? Files.walk(corpus) : Stream.empty()) {
      for (Path path :
          Stream.concat(ours, others).filter(p -> p.toString().endsWith(".ifc")).toList()) {
        same += givesBack(path) ? 1 : 0;
      }
    }
    assertThat(same).isGreaterThanOrEqualTo(3);
  }

  /** Whether the file is read at all. */
  private static boolean givesBack(Path path) throws IOException {
    StepFile file;
    try {
      file = StepFile.read(path);
    } catch (InputException e) {
      return false;
    }
    byte[] spliced = StepSplice.insert(file, new byte[0]);
    assertThat(sha256(spliced)).as("%s", path).isEqualTo(sha256(Files.readAllBytes(path)));
    return true;
  }

  private static byte[] sha256(byte[] bytes) {
    try {
      return java.security.MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (java.security.NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
