package org.underlee.step;

import java.util.Arrays;
import java.util.stream.LongStream;

/** Looks for a short text in a file of any length, on all processors, a piece at a time. */
final class ByteSearch {
  private static final int PIECE = 1 << 18;

  /** Looked through side by side, each with one copy of a piece at a time. */
  private static final int PARTS = 16;

  private ByteSearch() {}

  static boolean holds(StepBytes bytes, byte[] wanted) {
    long part = bytes.size() / PARTS + 1;
    return LongStream.range(0, PARTS)
        .parallel()
        .anyMatch(i -> holds(bytes, i * part, Math.min(bytes.size(), (i + 1) * part), wanted));
  }

  private static boolean holds(StepBytes bytes, long from, long to, byte[] wanted) {
    byte[] spare = {};
    for (long at = from; at < to; at += PIECE) {
      // What follows the piece is looked at as far as it is long.
      int length = (int) Math.min(PIECE + wanted.length - 1L, bytes.size() - at);
      StepBytes.Window window = bytes.window(at, length, spare);
      if (holds(window, (int) (at - window.base()), length, wanted)) {
        return true;
      }
      spare = window.bytes();
    }
    return false;
  }

  private static boolean holds(StepBytes.Window window, int start, int length, byte[] wanted) {
    byte[] b = window.bytes();
    int end = start + length - wanted.length;
    int[] steps = steps(wanted);
    int reach = wanted.length - 1;
    byte last = wanted[reach];
    for (int at = start; at <= end; at += steps[b[at + reach] & 0xFF]) {
      if (b[at + reach] == last
          && Arrays.equals(b, at, at + wanted.length, wanted, 0, wanted.length)) {
        return true;
      }
    }
    return false;
  }

  /** How far on the text may begin at the next, by the byte at its end: Horspool, 1980. */
  private static int[] steps(byte[] wanted) {
    int[] steps = new int[1 << Byte.SIZE];
    Arrays.fill(steps, wanted.length);
    for (int i = 0; i < wanted.length - 1; i++) {
      steps[wanted[i] & 0xFF] = wanted.length - 1 - i;
    }
    return steps;
  }
}
