package org.underlee.server;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;

/**
 * Reads a model with npm {@code web-ifc}, which shares nothing with our reader. Installed once into
 * {@code target/web-ifc}, in the version that the samples pin; needs the npm registry then.
 */
final class Witness {
  static final String SKIPPED = "skipped: Node.js is not on the path";

  private static final Path ROOT = Path.of(System.getProperty("underlee.root"));
  private static final Path HOME = ROOT.resolve("plugin/server/target/web-ifc");

  private Witness() {}

  static boolean isThere() {
    try {
      return run(ROOT, "node", "--version").startsWith("v")
          && !run(ROOT, "npm", "--version").isEmpty();
    } catch (IOException | InterruptedException e) {
      return false;
    }
  }

  /** What has a GlobalId, a line each, in the order of GlobalIds. */
  static List<String> rooted(Path model) throws IOException, InterruptedException {
    install();
    String lines = run(HOME, "node", "rooted.mjs", model.toString());
    // A reason may name an element of the designer's by its number, which is another there.
    return lines.lines().map(l -> l.replaceAll("#\\d+", "#")).sorted().toList();
  }

  private static void install() throws IOException, InterruptedException {
    Files.createDirectories(HOME);
    for (String pinned : List.of("package.json", "package-lock.json")) {
      copy(ROOT.resolve("samples/src/test/node").resolve(pinned));
    }
    copy(ROOT.resolve("plugin/server/src/test/node/rooted.mjs"));
    if (!Files.isDirectory(HOME.resolve("node_modules/web-ifc"))) {
      run(HOME, "npm", "ci", "--no-audit", "--no-fund");
    }
  }

  private static void copy(Path file) throws IOException {
    Files.copy(file, HOME.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
  }

  private static String run(Path folder, String... command)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new IOException(String.join(" ", command) + " ended with " + process.exitValue());
    }
    return out;
  }
}
