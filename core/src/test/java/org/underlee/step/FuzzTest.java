package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;

/** Damaged models give a result or a declared error, and nothing else. */
class FuzzTest {
  /** More can be asked for with {@code -Dunderlee.mutants}; see docs/benchmarks/reading.md. */
  private static final long MUTANTS = Long.getLong("underlee.mutants", 10_000);

  /** A prime, so that the places are of all kinds. */
  private static final int SOME_PLACES = 997;

  private static List<Path> samples() throws IOException {
    return Fuzz.smallModels(Path.of(System.getProperty("underlee.root")).resolve("samples"));
  }

  /**
   * In processes of their own, whose memory can be held to 512 MB. With public models where there
   * are any.
   */
  @Test
  void aDamagedModelIsReadOrRefusedInTimeAndMemory() throws IOException, InterruptedException {
    int processes = Runtime.getRuntime().availableProcessors();
    List<Process> running = new ArrayList<>();
    for (int i = 0; i < processes; i++) {
      long first = MUTANTS * i / processes;
      running.add(fuzz(first, MUTANTS * (i + 1) / processes - first));
    }
    long read = 0;
    long refused = 0;
    for (Process fuzz : running) {
      String said = new String(fuzz.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(fuzz.waitFor()).as(said).isZero();
      Matcher counts =
          Pattern.compile("(\\d+) mutants read, (\\d+) refused, 0 faults").matcher(said);
      assertThat(counts.find()).as(said).isTrue();
      read += Long.parseLong(counts.group(1));
      refused += Long.parseLong(counts.group(2));
    }
    assertThat(read + refused).isEqualTo(MUTANTS);
    assertThat(Math.min(read, refused)).isGreaterThan(MUTANTS / 5);
  }

  /**
   * Found as seed 1,006,276 of other files: bars bent as wide as a town, each of a million faces,
   * filled the memory. What its small form is refused with is said in time, in the same memory.
   */
  @Test
  void barsTooRoundForTheMemoryAreRefusedWithAdvice() throws IOException, InterruptedException {
    Path folder = Path.of(System.getProperty("underlee.root"), "core", "src", "test", "resources");
    Path fault = folder.resolve(Path.of("org", "underlee", "step", "faults", "too-round-bars.ifc"));
    Process reading = java(KnownFault.class, fault.toString());
    String said = new String(reading.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(reading.waitFor()).as(said).isZero();
    assertThat(said)
        .startsWith("refused: too-round-bars.ifc: the bodies of its elements take more than")
        .contains("-Xmx8g");
  }

  /**
   * One thread does all of a process's work, so that its own time is what a mutant takes. More than
   * one must not share a common pool without workers: they can wait for each other's tasks for
   * ever.
   */
  private static Process fuzz(long first, long count) throws IOException {
    Path corpus = Path.of(System.getProperty("underlee.corpus"), "edge");
    List<String> words =
        new ArrayList<>(
            List.of(
                String.valueOf(first),
                String.valueOf(count),
                Path.of(System.getProperty("underlee.root"), "samples").toString()));
    if (Files.isDirectory(corpus)) {
      words.add(corpus.toString());
    }
    return java(Fuzz.class, words.toArray(new String[0]));
  }

  private static Process java(Class<?> program, String... words) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-Djava.util.concurrent.ForkJoinPool.common.parallelism=0",
                "-cp",
                System.getProperty("java.class.path"),
                program.getName()));
    command.addAll(List.of(words));
    return new ProcessBuilder(command).redirectErrorStream(true).start();
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
  void aSampleCutOffAnywhereIsRefusedUntilOnlyTheTrailerIsMissing() throws IOException {
    assertThat(Cuts.read(samples().get(0), 1)).isPositive();
  }

  /** Each so-manieth place; {@link Cuts#main} tries them all, in a few minutes of a processor. */
  @Test
  void modelsCutOffAnywhereAreReadOrRefused() throws IOException {
    List<Path> models =
        new ArrayList<>(Cuts.models(Path.of(System.getProperty("underlee.root"), "samples")));
    Path corpus = Path.of(System.getProperty("underlee.corpus"));
    if (Files.isDirectory(corpus)) {
      models.addAll(Cuts.models(corpus));
    }
    for (Path model : models) {
      Cuts.read(model, SOME_PLACES);
    }
    assertThat(models).isNotEmpty();
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
