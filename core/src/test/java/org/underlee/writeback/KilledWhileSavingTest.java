package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Another process saves over and over and is killed without warning, as by {@code kill -9}. */
class KilledWhileSavingTest {
  /** {@code -Dunderlee.kills=200} for the published figure. */
  private static final int KILLS = Integer.getInteger("underlee.kills", 4);

  private static final int BYTES = 4_000_000;
  private static final long LONGEST_WAIT = 120;

  @TempDir Path folder;

  /** Saves one and the other file in turn, until it is killed; says when it begins. */
  public static final class Saver {
    private Saver() {}

    public static void main(String[] args) throws IOException {
      Path target = Path.of(args[0]);
      Path input = Path.of(args[1]);
      Files.writeString(Path.of(args[2]), "running");
      for (int i = 0; ; i++) {
        new SafeSave().plain(input, target, false, content(i % 2));
      }
    }
  }

  private static byte[] content(int which) {
    byte[] bytes = new byte[BYTES + which];
    Arrays.fill(bytes, (byte) ('a' + which));
    return bytes;
  }

  @Test
  void theFileIsAtEveryMomentTheWholeOldOneOrTheWholeNewOne() throws Exception {
    Path target = Files.write(folder.resolve("deck.drained.ifc"), content(1));
    Path input = Files.writeString(folder.resolve("deck.ifc"), "the input");
    byte[] one = content(0);
    byte[] other = content(1);
    Random random = new Random(1);
    for (int kill = 0; kill < KILLS; kill++) {
      Path running = folder.resolve("running-" + kill);
      Process process =
          new ProcessBuilder(
                  List.of(
                      Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                      "-Xmx128m",
                      "-cp",
                      System.getProperty("java.class.path"),
                      Saver.class.getName(),
                      target.toString(),
                      input.toString(),
                      running.toString()))
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      while (!Files.exists(running) && process.isAlive()) {
        Thread.sleep(5);
      }
      Thread.sleep(random.nextLong(LONGEST_WAIT));
      assertThat(process.isAlive()).as("it was still saving").isTrue();
      process.destroyForcibly().waitFor();
      byte[] found = Files.readAllBytes(target);
      assertThat(Arrays.equals(found, one) || Arrays.equals(found, other))
          .as("kill %s", kill)
          .isTrue();
      assertThat(input).hasContent("the input");
      removeLeftOvers();
    }
  }

  /**
   * A killed save leaves its temporary file beside the target, which the next save steps around.
   */
  private void removeLeftOvers() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".tmp")).toList()) {
        Files.delete(file);
      }
    }
  }
}
