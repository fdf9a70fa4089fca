package org.underlee.writeback;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.step.ByteRange;
import org.underlee.step.Sha256;

/**
 * The comments that mark our block. They are looked for as comments of the Part 21 text: the same
 * words inside a designer's string mark nothing.
 */
final class Markers {
  private static final Pattern BEGIN =
      Pattern.compile(
          "/\\* Underlee begins: drained-deck assembly, format 1,"
              + " sha256 of the original ([0-9a-f]{64}), length ([0-9]{1,10}) \\*/");

  /** What any format's first line starts with. */
  private static final String BEGINS = "/* Underlee begins:";

  static final String END = "/* Underlee ends */";

  private static final String ADVICE =
      "Go back to the designer's file and run the design again on that.";

  private Markers() {}

  static String begin(byte[] original) {
    return BEGINS
        + " drained-deck assembly, format 1, sha256 of the original "
        + Sha256.hex(original)
        + ", length "
        + original.length
        + " */";
  }

  /**
   * A block that is in a file.
   *
   * @param range from the first marker through the line end after the last
   * @param sha256 of the original, as the first marker says; likewise its length
   */
  record Found(ByteRange range, String sha256, long length) {}

  /**
   * @throws InputException when the markers do not make one whole block of a known format
   */
  static Optional<Found> find(byte[] bytes) {
    List<ByteRange> ours = ours(bytes);
    if (ours.isEmpty()) {
      return Optional.empty();
    }
    Matcher begin = BEGIN.matcher(text(bytes, ours.get(0)));
    if (!begin.matches()) {
      throw broken("the block of an earlier design begins in an unknown format");
    }
    if (ours.size() != 2 || !text(bytes, ours.get(1)).equals(END)) {
      throw broken(
          "the block of an earlier design is not whole: it should begin once and end once");
    }
    ByteRange range = new ByteRange(ours.get(0).from(), afterLineEnd(bytes, ours.get(1).to()));
    return Optional.of(new Found(range, begin.group(1), Long.parseLong(begin.group(2))));
  }

  private static List<ByteRange> ours(byte[] bytes) {
    List<ByteRange> ours = new ArrayList<>();
    int at = 0;
    while (at < bytes.length) {
      byte c = bytes[at];
      if (c == '\'' || c == '"') {
        at = after(bytes, at + 1, c == '\'' ? "'" : "\"");
      } else if (c == '/' && starts(bytes, at, "/*")) {
        int end = after(bytes, at + 2, "*/");
        if (starts(bytes, at, BEGINS) || starts(bytes, at, END)) {
          ours.add(new ByteRange(at, end));
        }
        at = end;
      } else {
        at++;
      }
    }
    return ours;
  }

  /** Just after the next {@code closing}, or the end of the file. */
  private static int after(byte[] bytes, int from, String closing) {
    int at = from;
    while (at < bytes.length && !starts(bytes, at, closing)) {
      at++;
    }
    return Math.min(bytes.length, at + closing.length());
  }

  private static boolean starts(byte[] bytes, int at, String with) {
    if (at + with.length() > bytes.length) {
      return false;
    }
    for (int i = 0; i < with.length(); i++) {
      if (bytes[at + i] != with.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private static int afterLineEnd(byte[] bytes, int at) {
    int end = starts(bytes, at, "\r") ? at + 1 : at;
    return starts(bytes, end, "\n") ? end + 1 : end;
  }

  private static String text(byte[] bytes, ByteRange range) {
    return new String(bytes, range.from(), range.length(), StandardCharsets.ISO_8859_1);
  }

  private static InputException broken(String what) {
    return new InputException(Place.NOWHERE, what, ADVICE);
  }
}
