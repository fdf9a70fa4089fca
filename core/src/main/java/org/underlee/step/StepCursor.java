package org.underlee.step;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * A place in a stretch of the text that moves forward over white space, comments, words and
 * numbers. Notes when it had to look beyond the stretch, so that a longer one can be tried.
 */
final class StepCursor {
  /** A number of this many digits always fits a {@code long}. */
  private static final int MAX_ID_DIGITS = 18;

  /** Windows are copied in steps of this: large against what is read twice, small in memory. */
  private static final int WINDOW = 1 << 18;

  private static final boolean[] WORD = new boolean[256];

  static {
    String letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";
    for (char c : (letters + "0123456789_-!").toCharArray()) {
      WORD[c] = true;
    }
  }

  final StepSource source;
  byte[] bytes = {};
  int limit;
  int at;

  /** Whether the end of a stretch that is not the file's was met: what was read is in doubt. */
  boolean ranOut;

  /** The instance being read, for messages; negative when outside of one. */
  long instance = -1;

  /** Where its keyword begins and ends. */
  int keywordFrom;

  int keywordTo;

  /** Whether errors are only a sign to stop, so that their places need not be found. */
  boolean tentative;

  private long base;
  private boolean last;

  StepCursor(StepSource source) {
    this.source = source;
  }

  static StepCursor at(StepSource source, long from, long to) {
    StepCursor cursor = new StepCursor(source);
    cursor.show(source.bytes.window(from, (int) (to - from), cursor.bytes));
    cursor.moveTo(from);
    return cursor;
  }

  /** Shows at least {@code length} bytes from a place on, or all that there are. */
  void load(long from, int length) {
    boolean shown = from >= base && (last || from + length <= base + limit);
    if (!shown || bytes.length == 0) {
      show(source.bytes.window(from, Math.max(length, WINDOW), bytes));
    }
    moveTo(from);
  }

  private void show(StepBytes.Window window) {
    bytes = window.bytes();
    limit = window.limit();
    base = window.base();
    last = window.last();
  }

  private void moveTo(long offset) {
    at = (int) (offset - base);
    ranOut = false;
    instance = -1;
  }

  /** Where in the file the cursor is. */
  long offset() {
    return base + at;
  }

  long offset(int index) {
    return base + index;
  }

  boolean atEnd() {
    return endsBefore(at);
  }

  /** Whether there is no byte at this index; notes when a longer stretch might have one. */
  boolean endsBefore(int index) {
    if (index < limit) {
      return false;
    }
    ranOut |= !last;
    return true;
  }

  /** The byte here, or 0 at the end. */
  int peek() {
    return atEnd() ? 0 : bytes[at];
  }

  boolean at(char c) {
    return peek() == c;
  }

  /** Steps over white space, control characters and comments. */
  void skipSpace() {
    while (!atEnd()) {
      byte c = bytes[at];
      if (c >= 0 && c <= ' ') {
        at++;
      } else if (c == '/' && !endsBefore(at + 1) && bytes[at + 1] == '*') {
        skipComment();
      } else {
        return;
      }
    }
  }

  private void skipComment() {
    int start = at;
    at += 2;
    while (!endsBefore(at + 1)) {
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
    return text(start, at);
  }

  static boolean isWord(byte c) {
    return WORD[c & 0xFF];
  }

  void skipWord() {
    byte[] text = bytes;
    int end = limit;
    int i = at;
    while (i < end && WORD[text[i] & 0xFF]) {
      i++;
    }
    at = i;
    atEnd();
  }

  /** ASCII in upper case. */
  String text(int from, int to) {
    String text = new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
    for (int i = from; i < to; i++) {
      if (bytes[i] >= 'a' || bytes[i] < 0) {
        return text.toUpperCase(Locale.ROOT);
      }
    }
    return text;
  }

  /** The number after a {@code #}, at which the cursor stands. */
  long id() {
    byte[] text = bytes;
    int end = limit;
    int start = at + 1;
    int i = start;
    long id = 0;
    while (i < end && text[i] >= '0' && text[i] <= '9') {
      id = 10 * id + (text[i++] - '0');
    }
    at = i;
    atEnd();
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

  /** Steps over a binary whose first quotation mark is here. */
  void skipBinary() {
    int start = at++;
    while (!atEnd() && bytes[at] != '"' && at - start <= source.limits.stringBytes()) {
      at++;
    }
    closeQuoted(start);
  }

  /**
   * Steps over a string whose first quotation mark is here.
   *
   * @return {@link #PLAIN}, or other marks of what it holds
   */
  int skipString() {
    int start = at++;
    int most = limit - at > source.limits.stringBytes() ? at + source.limits.stringBytes() : limit;
    int holds = skipPlain(most);
    while (at < most && bytes[at] == '\\') {
      int length = directiveLength();
      at += length;
      holds |= (length == 1 ? LONE_BACKSLASH : PLAIN) | skipPlain(most);
    }
    closeQuoted(start);
    return holds;
  }

  /** Steps to the next apostrophe or backslash; tells of raw bytes on the way. */
  private int skipPlain(int end) {
    byte[] text = bytes;
    int bits = 0;
    int i = at;
    while (i < end && text[i] != '\'' && text[i] != '\\') {
      bits |= text[i++];
    }
    at = i;
    return bits < 0 ? RAW_BYTES : PLAIN;
  }

  /** What a string holds: nothing that the standard forbids. */
  static final int PLAIN = 0;

  /** What a string holds: bytes above 127. */
  static final int RAW_BYTES = 1;

  /** What a string holds: a backslash that begins no directive. */
  static final int LONE_BACKSLASH = 2;

  private void closeQuoted(int start) {
    at = Math.min(at, limit);
    int most = source.limits.stringBytes();
    if (atEnd() || at - start > most) {
      throw error(
          start,
          "a string that begins here is not closed within "
              + (atEnd() ? "the file" : most + " bytes")
              + ": "
              + source.snippet(offset(start)),
          "Maybe the file was cut off, or an apostrophe inside a text is not doubled"
              + (atEnd() ? "." : "; if the text is meant to be so long, use --string-limit."));
    }
    at++;
  }

  /**
   * Length of the directive that the backslash here begins, or 1 when it begins none. An apostrophe
   * right after {@code \S\} is a letter, as in {@code §}, and ends no string.
   */
  private int directiveLength() {
    int second = byteAt(at + 2);
    return switch (byteAt(at + 1)) {
      case '\\' -> 2;
      case 'S' -> second == '\\' ? 4 : 1;
      case 'P' -> second >= 'A' && second <= 'I' && byteAt(at + 3) == '\\' ? 4 : 1;
      case 'X' -> second == '\\' ? 3 : isWidth(second) && byteAt(at + 3) == '\\' ? 4 : 1;
      default -> 1;
    };
  }

  private static boolean isWidth(int digit) {
    return digit == '0' || digit == '2' || digit == '4';
  }

  private int byteAt(int index) {
    return endsBefore(index) ? 0 : bytes[index];
  }

  InputException expected(String what) {
    String advice =
        atEnd()
            ? "Maybe the file was cut off while it was copied: get it again from its author."
            : "Have the program that wrote the file export it again, or correct this line.";
    return error(at, "expected " + what + ", found " + source.snippet(offset()), advice);
  }

  InputException error(int index, String message, String advice) {
    if (tentative) {
      return new InputException(Place.NOWHERE, message, advice);
    }
    String entity = instance < 0 ? "" : text(keywordFrom, keywordTo);
    return source.error(offset(index), instance, entity, message, advice);
  }
}
