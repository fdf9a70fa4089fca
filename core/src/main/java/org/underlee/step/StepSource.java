package org.underlee.step;

import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/** A file with its name and limits: says where an offset is, and makes errors that show it. */
final class StepSource {
  /** How much of the text an error shows: half a line of a terminal. */
  private static final int SNIPPET = 40;

  final StepBytes bytes;
  final String name;
  final StepLimits limits;

  /** Made when the first place is asked for, the same whoever makes it. */
  private volatile @Nullable LineTable lines;

  StepSource(StepBytes bytes, String name, StepLimits limits) {
    this.bytes = bytes;
    this.name = name;
    this.limits = limits;
  }

  Place place(long offset) {
    LineTable known = lines;
    if (known == null) {
      known = new LineTable(bytes);
      lines = known;
    }
    return known.place(offset).inFile(name);
  }

  /**
   * An error at an offset.
   *
   * @param instance the number of the instance it is in; negative when in none
   * @param entity its keyword, where known, else empty
   */
  InputException error(long offset, long instance, String entity, String message, String advice) {
    long at = Math.min(offset, bytes.size());
    Place place = place(at);
    Place exact = instance < 0 ? place : place.atInstance(instance);
    String what = (entity.isEmpty() ? "" : entity + ": ") + message;
    // At the very beginning the byte would say nothing more.
    return new InputException(exact, at == 0 ? what : what + " (byte " + at + ")", advice);
  }

  /** The text at an offset, in quotation marks, or {@code the end of the file}. */
  String snippet(long offset) {
    if (offset >= bytes.size()) {
      return "the end of the file";
    }
    byte[] there = new byte[(int) Math.min(SNIPPET, bytes.size() - offset)];
    bytes.copy(offset, there, there.length);
    String text = new String(there, StandardCharsets.ISO_8859_1);
    return '"' + text.replaceAll("[\\x00-\\x1f\\x7f-\\x9f]+", " ").strip() + '"';
  }
}
