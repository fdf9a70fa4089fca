package org.underlee.step;

import java.nio.charset.StandardCharsets;

/** Reads numbers from the text without a string of each. */
final class PlainNumber {
  /** A double holds every whole number up to this many digits, and each of these powers of ten. */
  private static final int EXACT_DIGITS = 15;

  private static final double[] POWERS = powers();

  private PlainNumber() {}

  private static double[] powers() {
    double[] powers = new double[EXACT_DIGITS + 1];
    powers[0] = 1;
    for (int i = 1; i < powers.length; i++) {
      powers[i] = powers[i - 1] * 10;
    }
    return powers;
  }

  /**
   * The double nearest to the number in a stretch of the text.
   *
   * @throws NumberFormatException when it is none
   */
  static double of(byte[] bytes, int from, int to) {
    double value = plain(bytes, from, to);
    return Double.isNaN(value)
        ? Double.parseDouble(new String(bytes, from, to - from, StandardCharsets.ISO_8859_1))
        : value;
  }

  /**
   * The value of a plain number of few digits; NaN for any other. Its digits are a whole number
   * that a double holds, and so is the power of ten: one division rounds as the standard says.
   */
  static double plain(byte[] bytes, int from, int to) {
    boolean negative = from < to && bytes[from] == '-';
    long digits = 0;
    int count = 0;
    int point = to;
    for (int at = negative ? from + 1 : from; at < to; at++) {
      byte c = bytes[at];
      if (c >= '0' && c <= '9' && ++count <= EXACT_DIGITS) {
        digits = digits * 10 + (c - '0');
      } else if (c == '.' && point == to) {
        point = at + 1;
      } else {
        return Double.NaN;
      }
    }
    double value = digits / POWERS[Math.min(to - point, EXACT_DIGITS)];
    return count == 0 ? Double.NaN : negative ? -value : value;
  }
}
