package org.underlee.samples;

import static java.nio.file.StandardOpenOption.CREATE;
import static java.nio.file.StandardOpenOption.WRITE;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A folder of {@code src/test} with a script for Node.js and the packages that it is pinned to,
 * installed once below {@code target}; needs the npm registry then.
 */
public final class NodeScripts {
  public static final String SKIPPED = "skipped: Node.js is not on the path";

  /** All public models take web-ifc about one minute of a processor; this is for a busy machine. */
  private static final int MINUTES = 20;

  private final Path home;

  private NodeScripts(Path home) {
    this.home = home;
  }

  /** Whether {@code node} and {@code npm} can be started. */
  public static boolean available() {
    return starts("node") && starts("npm");
  }

  /**
   * Installs what a folder's scripts need, unless that was done.
   *
   * @param folder below {@code samples/src/test}
   */
  public static NodeScripts in(String folder) throws IOException, InterruptedException {
    Path module = Path.of(System.getProperty("underlee.root", "..")).resolve("samples");
    Path home = Files.createDirectories(module.resolve("target").resolve(folder));
    NodeScripts scripts = new NodeScripts(home);
    // Tests run in more than one process.
    try (FileChannel file = FileChannel.open(home.resolve("lock"), CREATE, WRITE);
        FileLock lock = file.lock()) {
      if (scripts.renewed(module.resolve("src/test").resolve(folder)) && lock.isValid()) {
        scripts.run(List.of("npm", "ci", "--no-audit", "--no-fund"), "");
      }
    }
    return scripts;
  }

  /** Copies what is in the folder; says whether packages must be installed anew. */
  private boolean renewed(Path folder) throws IOException {
    boolean changed = !Files.isDirectory(home.resolve("node_modules"));
    for (Path from : scripts(folder)) {
      Path to = home.resolve(from.getFileName());
      if (Files.exists(to) && Files.mismatch(from, to) < 0) {
        continue;
      }
      changed |= from.toString().endsWith(".json");
      Files.copy(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
    return changed;
  }

  private static List<Path> scripts(Path folder) throws IOException {
    try (var files = Files.list(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  /** What a command prints for an input. */
  public String run(List<String> command, String input) throws IOException, InterruptedException {
    Path in = Files.writeString(Files.createTempFile(home, "in", ".txt"), input);
    Path out = Files.createTempFile(home, "out", ".txt");
    Path err = Files.createTempFile(home, "err", ".txt");
    try {
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
        throw new IOException(
            command.get(0) + " ended with " + process.exitValue() + ": " + Files.readString(err));
      }
      return Files.readString(out, StandardCharsets.UTF_8);
    } finally {
      Files.delete(in);
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
