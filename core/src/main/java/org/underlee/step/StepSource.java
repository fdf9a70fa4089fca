package org.underlee.step;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/** The bytes of one file with its name: says where an offset is, and makes errors that show it. */
final class StepSource {
  /** How much of the text an error shows: half a line of a terminal. */
  private static final int SNIPPET = 40;

  final byte[] bytes;
  final String name;

  /** Offsets of line starts; made when the first place is asked for, the same whoever makes it. */
  private volatile int @Nullable [] lineStarts;

  StepSource(byte[] bytes, String name) {
    this.bytes = bytes;
    this.name = name;
  }

  Place place(int offset) {
    int[] starts = lineStarts();
    int found = Arrays.binarySearch(starts, offset);
    int line = found >= 0 ? found : -found - 2;
    return Place.text(line + 1, offset - starts[line] + 1).inFile(name);
  }

  /** An error at an offset, inside an instance where {@code instance} is not negative. */
  InputException error(int offset, long instance, String message, String advice) {
    Place place = place(Math.min(offset, bytes.length));
    Place exact = instance < 0 ? place : place.atInstance(instance);
    return new InputException(exact, exact + ": " + message, advice);
  }

  /** The text at an offset, in quotation marks, or {@code the end of the file}. */
  String snippet(int offset) {
    if (offset >= bytes.length) {
      return "the end of the file";
    }
    int length = Math.min(SNIPPET, bytes.length - offset);
    String text = new String(bytes, offset, length, StandardCharsets.ISO_8859_1);
    return '"' + text.replaceAll("[\\x00-\\x1f\\x7f-\\x9f]+", " ").strip() + '"';
  }

  private int[] lineStarts() {
    int[] known = lineStarts;
    if (known == null) {
      known = findLineStarts();
      lineStarts = known;
    }
    return known;
  }

  private int[] findLineStarts() {
    int[] starts = new int[64];
    int count = 1;
    for (int i = 0; i < bytes.length; i++) {
      boolean ends =
          bytes[i] == '\n' || (bytes[i] == '\r' && (i + 1 == bytes.length || bytes[i + 1] != '\n'));
      if (ends) {
        if (count == starts.length) {
          starts = Arrays.copyOf(starts, 2 * count);
        }
        starts[count++] = i + 1;
      }
    }
    return Arrays.copyOf(starts, count);
  }
}
