package org.underlee.step;

/** What is noticed while instances are stepped over; −1 where it never was. */
final class Noticed {
  /** Highest {@code #} number outside of strings and comments. */
  long highestId;

  /** Where the first string with bytes above 127 is. */
  long rawBytes = -1;

  /** Where the first string with a backslash that begins no directive is. */
  long loneBackslash = -1;

  /** Takes what was noticed further on in the text. */
  void addLater(Noticed later) {
    highestId = Math.max(highestId, later.highestId);
    rawBytes = rawBytes < 0 ? later.rawBytes : rawBytes;
    loneBackslash = loneBackslash < 0 ? later.loneBackslash : loneBackslash;
  }

  void string(int holds, long offset) {
    if (rawBytes < 0 && (holds & StepCursor.RAW_BYTES) != 0) {
      rawBytes = offset;
    }
    if (loneBackslash < 0 && (holds & StepCursor.LONE_BACKSLASH) != 0) {
      loneBackslash = offset;
    }
  }
}
