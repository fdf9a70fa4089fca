package org.underlee.step;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.underlee.finding.InputException;

/** Numbers the keywords of a file, looking a repeated one up by its bytes without a new string. */
final class KeywordTable {
  /** So many different keywords fit two bytes; IFC has about a thousand. */
  static final int MOST = Character.MAX_VALUE;

  /** A power of two well above the number of entity names that one model uses. */
  private static final int SLOTS = 1 << 10;

  private final byte[][] spellings = new byte[SLOTS][];
  private final char[] numbers = new char[SLOTS];
  private final Map<String, Character> known = new HashMap<>();
  private final List<String> names = new ArrayList<>();

  /** The number of the keyword at the cursor, whatever its case. */
  char number(StepCursor cursor) {
    byte[] bytes = cursor.bytes;
    int from = cursor.keywordFrom;
    int to = cursor.keywordTo;
    int hash = 0;
    for (int i = from; i < to; i++) {
      hash = 31 * hash + bytes[i];
    }
    int slot = (hash ^ (hash >>> 13)) & (SLOTS - 1);
    byte[] spelling = spellings[slot];
    if (spelling != null && stands(spelling, bytes, from, to)) {
      return numbers[slot];
    }
    // A cache, not a hash table: a clash of slots costs time, never a wrong answer.
    spellings[slot] = Arrays.copyOfRange(bytes, from, to);
    numbers[slot] = named(cursor);
    return numbers[slot];
  }

  /** Most keywords are too short for the JDK's comparison to pay. */
  private static boolean stands(byte[] spelling, byte[] bytes, int from, int to) {
    int i = to - from == spelling.length ? from : to + 1;
    while (i < to && bytes[i] == spelling[i - from]) {
      i++;
    }
    return i == to;
  }

  private char named(StepCursor cursor) {
    int from = cursor.keywordFrom;
    int length = cursor.keywordTo - from;
    String name =
        new String(cursor.bytes, from, length, StandardCharsets.ISO_8859_1)
            .toUpperCase(Locale.ROOT);
    Character number = known.get(name);
    if (number == null) {
      if (names.size() > MOST) {
        throw tooMany(cursor.source, cursor.offset(from));
      }
      number = (char) names.size();
      known.put(name, number);
      names.add(name);
    }
    return number;
  }

  static InputException tooMany(StepSource source, long offset) {
    return source.error(
        offset,
        -1,
        "",
        "more than " + MOST + " different keywords",
        "The file is damaged or no building model: export it again.");
  }

  List<String> names() {
    return names;
  }
}
