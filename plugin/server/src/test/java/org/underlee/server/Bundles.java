package org.underlee.server;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** Jars that the build has laid out for the server to install. */
final class Bundles {
  private static final Path FOLDER = Path.of(System.getProperty("underlee.bundles"));

  private Bundles() {}

  /** The server's own readers and writers of IFC text. */
  static Path readersAndWriters() throws IOException {
    return starting("ifcplugins-");
  }

  /** Our own, as it is shipped. */
  static Path underlee() {
    return Path.of(System.getProperty("underlee.plugin"));
  }

  private static Path starting(String name) throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files
          .filter(f -> f.getFileName().toString().startsWith(name))
          .findFirst()
          .orElseThrow();
    }
  }
}
