package org.underlee.step;

/**
 * Steps over values as nearly all programs write them: without comments, backslashes, binaries or
 * numbers of odd forms. Each step begins at an index and gives the index after what it stepped
 * over, or {@link #NOT} where something else stands there.
 */
final class PlainText {
  /** Something that only {@link StepParser} judges. */
  static final int NOT = -1;

  /** Digits that are surely no more than the largest double. */
  private static final int SURE_DIGITS = 300;

  /** The same before an exponent of two digits. */
  private static final int SURE_MANTISSA = 200;

  private static final int EXPONENT_DIGITS = 2;
  private static final int ID_DIGITS = 18;

  private PlainText() {}

  /** The byte at an index, or 0 at the end. */
  static byte byteAt(byte[] bytes, int at, int limit) {
    return at < limit ? bytes[at] : 0;
  }

  static int space(byte[] bytes, int from, int limit) {
    int at = from;
    while (at < limit && bytes[at] <= ' ' && bytes[at] >= 0) {
      at++;
    }
    return at;
  }

  static int digits(byte[] bytes, int from, int limit) {
    int at = from;
    while (at < limit && bytes[at] >= '0' && bytes[at] <= '9') {
      at++;
    }
    return at;
  }

  static int word(byte[] bytes, int from, int limit) {
    int at = from;
    while (at < limit && StepCursor.isWord(bytes[at])) {
      at++;
    }
    return at == from ? NOT : at;
  }

  /** A value that holds no other. */
  static int value(byte[] bytes, int from, int limit, int longestString) {
    return switch (byteAt(bytes, from, limit)) {
      case '#' -> id(bytes, from, limit);
      case '$', '*' -> from + 1;
      case '.' -> enumeration(bytes, from, limit);
      case '\'' -> string(bytes, from, limit, longestString);
      default -> number(bytes, from, limit);
    };
  }

  static int id(byte[] bytes, int from, int limit) {
    int at = digits(bytes, from + 1, limit);
    return at == from + 1 || at > from + 1 + ID_DIGITS ? NOT : at;
  }

  private static int enumeration(byte[] bytes, int from, int limit) {
    int at = word(bytes, from + 1, limit);
    return at >= 0 && byteAt(bytes, at, limit) == '.' ? at + 1 : NOT;
  }

  static int string(byte[] bytes, int from, int limit, int longest) {
    int at = from + 1;
    while (at < limit && bytes[at] != '\\') {
      if (bytes[at++] == '\'') {
        if (byteAt(bytes, at, limit) != '\'') {
          return at - from - 2 > longest ? NOT : at;
        }
        at++;
      }
    }
    return NOT;
  }

  private static int number(byte[] bytes, int from, int limit) {
    int first = bytes[from] == '-' ? from + 1 : from;
    int at = digits(bytes, first, limit);
    int digits = at - first;
    if (byteAt(bytes, at, limit) == '.') {
      int decimals = digits(bytes, at + 1, limit);
      digits += decimals - at - 1;
      at = decimals;
    }
    if (digits == 0 || digits > SURE_DIGITS) {
      return NOT;
    }
    return byteAt(bytes, at, limit) != 'E'
        ? at
        : digits > SURE_MANTISSA ? NOT : exponent(bytes, at + 1, limit);
  }

  private static int exponent(byte[] bytes, int from, int limit) {
    byte sign = byteAt(bytes, from, limit);
    int first = sign == '-' || sign == '+' ? from + 1 : from;
    int at = digits(bytes, first, limit);
    return at == first || at > first + EXPONENT_DIGITS ? NOT : at;
  }
}
