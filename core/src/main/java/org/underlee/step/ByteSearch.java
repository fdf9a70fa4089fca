package org.underlee.step;

import java.util.Arrays;
import java.util.stream.LongStream;

/** Looks for a short text in a file of any length, on all processors, a piece at a time. */
final class ByteSearch {
  private static final int PIECE = 1 << 20;

  private ByteSearch() {}

  static boolean holds(StepBytes bytes, byte[] wanted) {
    long pieces = (bytes.size() + PIECE - 1) / PIECE;
    return LongStream.range(0, pieces).parallel().anyMatch(i -> holds(bytes, i * PIECE, wanted));
  }

  /** Whether it begins in the piece: what follows the piece is looked at as far as it is long. */
  private static boolean holds(StepBytes bytes, long from, byte[] wanted) {
    int length = (int) Math.min(PIECE + wanted.length - 1L, bytes.size() - from);
    StepBytes.Window window = bytes.window(from, length, new byte[0]);
    byte[] b = window.bytes();
    int start = (int) (from - window.base());
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
