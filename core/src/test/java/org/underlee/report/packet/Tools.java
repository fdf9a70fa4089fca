package org.underlee.report.packet;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Starts programs that share nothing with ours. */
final class Tools {
  private static final int MINUTES = 5;

  private Tools() {}

  static boolean starts(String... command) {
    try {
      return new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor()
          == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /** What the program prints; fails with what it complains of. */
  static String run(Path home, List<String> command, String input)
      throws IOException, InterruptedException {
    Path in = Files.writeString(home.resolve("in.txt"), input);
    Path out = home.resolve("out.txt");
    Path err = home.resolve("err.txt");
    Process process =
        new ProcessBuilder(command)
            .directory(home.toFile())
            .redirectInput(in.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    if (!process.waitFor(MINUTES, TimeUnit.MINUTES)) {
      process.destroyForcibly();
      throw new IOException(command.get(0) + " did not end within " + MINUTES + " minutes");
    }
    if (process.exitValue() != 0) {
      throw new IOException(command + " failed: " + Files.readString(err));
    }
    return Files.readString(out, StandardCharsets.UTF_8);
  }
}
