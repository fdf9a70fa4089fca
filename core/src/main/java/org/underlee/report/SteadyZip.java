package org.underlee.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * Packs an archive again without the moment it was made, so that equal contents give equal bytes.
 */
final class SteadyZip {
  /**
   * A moment for all entries. Not the first that a zip can hold: Java writes that one in the
   * machine's time zone.
   */
  private static final LocalDateTime START = LocalDateTime.of(1980, 2, 1, 0, 0);

  private static final String CREATED = "(<dcterms:created[^>]*>)[^<]*(</dcterms:created>)";

  private SteadyZip() {}

  static byte[] of(byte[] zip) {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try {
      // Only a file can be read by its directory, and this writer's entries carry their sizes
      // there.
      Path file = Files.createTempFile("underlee", ".zip");
      try {
        Files.write(file, zip);
        repack(file, packed);
      } finally {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return packed.toByteArray();
  }

  private static void repack(Path file, ByteArrayOutputStream packed) throws IOException {
    try (ZipFile in = new ZipFile(file.toFile());
        ZipOutputStream out = new ZipOutputStream(packed)) {
      for (ZipEntry entry : Collections.list(in.entries())) {
        ZipEntry same = new ZipEntry(entry.getName());
        same.setTimeLocal(START);
        out.putNextEntry(same);
        out.write(undated(entry.getName(), in.getInputStream(entry).readAllBytes()));
        out.closeEntry();
      }
    }
  }

  private static byte[] undated(String name, byte[] content) {
    if (!name.equals("docProps/core.xml")) {
      return content;
    }
    String text = new String(content, StandardCharsets.UTF_8);
    return text.replaceAll(CREATED, "$1" + START + ":00Z$2").getBytes(StandardCharsets.UTF_8);
  }
}
