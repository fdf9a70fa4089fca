package org.underlee.step;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.underlee.finding.InputException;

/** A place in the text that moves forward over white space, comments, words and numbers. */
final class StepCursor {
  /** Deeper lists than this are taken for damage: IFC needs about four. */
  static final int MAX_NESTING = 128;

  /** Longer strings than this are taken for a missing quotation mark. */
  static final int MAX_STRING = 1 << 20;

  /** A number of this many digits always fits a {@code long}. */
  private static final int MAX_ID_DIGITS = 18;

  final StepSource source;
  final byte[] bytes;
  int at;

  /** The instance being read, for messages; negative when outside of one. */
  long instance = -1;

  StepCursor(StepSource source, int at) {
    this.source = source;
    this.bytes = source.bytes;
    this.at = at;
  }

  boolean atEnd() {
    return at >= bytes.length;
  }

  /** The byte here, or 0 at the end of the file. */
  int peek() {
    return at < bytes.length ? bytes[at] : 0;
  }

  boolean at(char c) {
    return peek() == c;
  }

  /** Steps over white space, control characters and comments. */
  void skipSpace() {
    while (at < bytes.length) {
      byte c = bytes[at];
      if (c >= 0 && c <= ' ') {
        at++;
      } else if (c == '/' && at + 1 < bytes.length && bytes[at + 1] == '*') {
        skipComment();
      } else {
        return;
      }
    }
  }

  private void skipComment() {
    int start = at;
    at += 2;
    while (at + 1 < bytes.length) {
      if (bytes[at] == '*' && bytes[at + 1] == '/') {
        at += 2;
        return;
      }
      at++;
    }
    throw error(start, "a comment that begins here never ends", "Close it with */.");
  }

  void expect(char c, String after) {
    skipSpace();
    if (!at(c)) {
      throw expected("'" + c + "' " + after);
    }
    at++;
  }

  /** A keyword in upper case, or an empty text when none begins here. */
  String word() {
    int start = at;
    skipWord();
    return new String(bytes, start, at - start, StandardCharsets.ISO_8859_1)
        .toUpperCase(Locale.ROOT);
  }

  void skipWord() {
    while (at < bytes.length && isWord(bytes[at])) {
      at++;
    }
  }

  private static boolean isWord(byte c) {
    return (c >= 'A' && c <= 'Z')
        || (c >= 'a' && c <= 'z')
        || (c >= '0' && c <= '9')
        || c == '_'
        || c == '-'
        || c == '!';
  }

  /** The number after a {@code #}, at which the cursor stands. */
  long id() {
    int start = ++at;
    long id = 0;
    while (at < bytes.length && bytes[at] >= '0' && bytes[at] <= '9') {
      id = 10 * id + (bytes[at++] - '0');
    }
    if (at == start) {
      throw expected("an instance number after '#'");
    }
    if (at - start > MAX_ID_DIGITS) {
      throw error(
          start - 1,
          "an instance number of " + (at - start) + " digits, at most 18 are read",
          "Have the program that wrote the file number its instances again.");
    }
    return id;
  }

  /** Steps over a string or binary whose first quotation mark is here. */
  void skipQuoted(char mark) {
    int start = at++;
    while (at < bytes.length && bytes[at] != mark) {
      at += bytes[at] == '\\' ? directiveLength() : 1;
    }
    at = Math.min(at, bytes.length);
    if (atEnd() || at - start > MAX_STRING) {
      throw error(
          start,
          "a string that begins here is not closed within "
              + (atEnd() ? "the file" : "1 MiB")
              + ": "
              + source.snippet(start),
          "Maybe the file was cut off, or an apostrophe inside a text is not doubled.");
    }
    at++;
  }

  /** An apostrophe right after {@code \S\} is a letter, as in {@code §}, and ends no string. */
  private int directiveLength() {
    if (at + 1 < bytes.length && bytes[at + 1] == '\\') {
      return 2;
    }
    boolean shift = at + 2 < bytes.length && bytes[at + 1] == 'S' && bytes[at + 2] == '\\';
    return shift ? 4 : 1;
  }

  InputException expected(String what) {
    String advice =
        atEnd()
            ? "Maybe the file was cut off while it was copied: get it again from its author."
            : "Have the program that wrote the file export it again, or correct this line.";
    return error(at, "expected " + what + ", found " + source.snippet(at), advice);
  }

  InputException error(int offset, String message, String advice) {
    return source.error(offset, instance, message, advice);
  }
}
