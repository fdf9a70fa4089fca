package org.underlee.report.bcf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * The archive that BCF is: entries by name, within limits; packed without the moment of packing.
 */
final class BcfZip {
  /** As for models: more entries than this are no file for people. */
  private static final int MOST_ENTRIES = 20_000;

  private static final long MOST_BYTES = 512L << 20;

  /** What unpacks to more than this many times the archive's size is a trap. */
  private static final long MOST_RATIO = 200;

  private static final long FREE_BYTES = 16L << 20;
  private static final int BLOCK = 8192;

  /**
   * A moment for all entries. Not the first that a zip can hold: Java writes that one in the
   * machine's time zone.
   */
  private static final LocalDateTime START = LocalDateTime.of(1980, 2, 1, 0, 0);

  private BcfZip() {}

  static Map<String, byte[]> read(byte[] zip, String name) {
    Map<String, byte[]> entries = new LinkedHashMap<>();
    long left = Math.min(MOST_BYTES, FREE_BYTES + MOST_RATIO * zip.length);
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        requireHarmless(e.getName(), name);
        if (!e.isDirectory()) {
          byte[] bytes = unpacked(in, left, name);
          left -= bytes.length;
          if (entries.put(e.getName(), bytes) != null || entries.size() > MOST_ENTRIES) {
            throw refused(name, "has too many entries, or one twice: " + e.getName());
          }
        }
      }
    } catch (ZipException | IllegalArgumentException | java.io.EOFException e) {
      throw refused(name, "is damaged: " + e.getMessage());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return entries;
  }

  private static byte[] unpacked(ZipInputStream in, long most, String name) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] block = new byte[BLOCK];
    for (int n = in.read(block); n >= 0; n = in.read(block)) {
      out.write(block, 0, n);
      if (out.size() > most) {
        throw refused(name, "unpacks to more than is allowed for its size");
      }
    }
    return out.toByteArray();
  }

  private static void requireHarmless(String entry, String name) {
    String path = entry.replace('\\', '/');
    if (path.startsWith("/")
        || path.matches("[A-Za-z]:.*")
        || ("/" + path + "/").contains("/../")) {
      throw refused(name, "has the entry \"" + entry + "\", which points out of it");
    }
  }

  private static InputException refused(String name, String what) {
    return new InputException(
        Place.NOWHERE.inFile(name), "the BCF archive " + what, "Ask its author for a sound one.");
  }

  static byte[] write(Map<String, byte[]> entries) {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(packed)) {
      for (Map.Entry<String, byte[]> e : entries.entrySet()) {
        ZipEntry entry = new ZipEntry(e.getKey());
        entry.setTimeLocal(START);
        out.putNextEntry(entry);
        out.write(e.getValue());
        out.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return packed.toByteArray();
  }
}
