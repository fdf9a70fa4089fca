package org.underlee.samples;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A folder below {@code target} where npm packages that are witnesses of ours are installed, by
 * their lock file; the npm registry is needed the first time.
 *
 * @param from the folder of this module that has the package file, its lock and the script
 * @param name of the folder below {@code target}
 */
public record NodeHome(String from, String name, String script) {
  public static final String SKIPPED = "skipped: Node.js is not on the path";

  /** All public models take about one minute of a processor; this is for a busy machine. */
  private static final int MINUTES = 20;

  /** Whether {@code node} and {@code npm} can be started. */
  public static boolean isAvailable() {
    return starts("node") && starts("npm");
  }

  /** The folder, with what the lock file says in it. */
  public Path installed() throws IOException, InterruptedException {
    Path module = Path.of(System.getProperty("underlee.root", "..")).resolve("samples");
    Path home = module.resolve("target").resolve(name);
    Files.createDirectories(home);
    boolean changed = !Files.isDirectory(home.resolve("node_modules"));
    for (String file : List.of("package.json", "package-lock.json", script)) {
      Path source = module.resolve(from).resolve(file);
      Path to = home.resolve(file);
      changed |=
          file.startsWith("package") && (!Files.exists(to) || Files.mismatch(source, to) >= 0);
      Files.copy(source, to, StandardCopyOption.REPLACE_EXISTING);
    }
    if (changed) {
      run(
          home,
          List.of("npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund"),
          home.resolve("package.json"));
    }
    return home;
  }

  /** What a program prints. */
  public static String run(Path home, List<String> command, Path input)
      throws IOException, InterruptedException {
    Path out = Files.createTempFile(home, "out", ".txt");
    Path err = Files.createTempFile(home, "err", ".txt");
    try {
      Process process =
          new ProcessBuilder(command)
              .directory(home.toFile())
              .redirectInput(input.toFile())
              .redirectOutput(out.toFile())
              .redirectError(err.toFile())
              .start();
      if (!process.waitFor(MINUTES, TimeUnit.MINUTES)) {
        process.destroyForcibly();
        throw new IOException(command.get(0) + " did not end within " + MINUTES + " minutes");
      }
      if (process.exitValue() != 0) {
        throw new IOException(
            command.get(0) + " ended with " + process.exitValue() + ": " + Files.readString(err));
      }
      return Files.readString(out, StandardCharsets.UTF_8);
    } finally {
      Files.delete(out);
      Files.delete(err);
    }
  }

  private static boolean starts(String program) {
    try {
      return new ProcessBuilder(program, "--version")
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
}
