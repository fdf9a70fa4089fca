package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Ctrl-C in the middle of a survey. */
class InterruptTest {
  private static final int SECONDS = 60;

  @TempDir Path folder;

  /**
   * The model comes through a pipe that is never closed, so that the survey is still reading when
   * it is stopped. A shell may have told its children to pass over Ctrl-C; {@code env} undoes that.
   */
  @Test
  void aSurveyStoppedWithControlCEndsWith130AndLeavesNoFile() throws Exception {
    assumeTrue(runs("env", "--default-signal=INT", "true"), "skipped: no GNU env on the path");
    Path model = folder.resolve("model.ifc");
    assumeTrue(runs("mkfifo", model.toString()), "skipped: no named pipes here");
    Process survey =
        new ProcessBuilder(
                "env",
                "--default-signal=INT",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Underlee.class.getName(),
                "survey",
                model.toString(),
                "--out",
                folder.resolve("survey.txt").toString())
            .redirectErrorStream(true)
            .start();
    // Opening a pipe waits for its reader: from here on the survey has begun.
    try (OutputStream pipe = Files.newOutputStream(model)) {
      pipe.write("ISO-10303-21;\nHEADER;\n".getBytes(StandardCharsets.US_ASCII));
      pipe.flush();
      assertThat(survey.waitFor(1, TimeUnit.SECONDS)).as("still reading").isFalse();
      assertThat(runs("kill", "-INT", String.valueOf(survey.pid()))).isTrue();
      assertThat(survey.waitFor(SECONDS, TimeUnit.SECONDS)).isTrue();
    } finally {
      survey.destroyForcibly();
    }
    assertThat(survey.exitValue()).isEqualTo(130);
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactly(model);
    }
  }

  private static boolean runs(String... command) throws InterruptedException {
    try {
      return new ProcessBuilder(command).redirectErrorStream(true).start().waitFor() == 0;
    } catch (IOException e) {
      return false;
    }
  }
}
