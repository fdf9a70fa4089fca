package org.underlee.step;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Numbers the keywords of a file, looking a repeated one up by its bytes without a new string. */
final class KeywordTable {
  /** A power of two well above the number of entity names that one model uses. */
  private static final int SLOTS = 1 << 12;

  private final byte[][] spellings = new byte[SLOTS][];
  private final int[] numbers = new int[SLOTS];
  private final Map<String, Integer> known = new HashMap<>();
  private final List<String> names = new ArrayList<>();

  /** The number of the keyword in the given bytes, whatever its case. */
  int number(byte[] bytes, int from, int to) {
    int hash = 0;
    for (int i = from; i < to; i++) {
      hash = 31 * hash + bytes[i];
    }
    int slot = (hash ^ (hash >>> 13)) & (SLOTS - 1);
    byte[] spelling = spellings[slot];
    if (spelling != null && Arrays.equals(spelling, 0, spelling.length, bytes, from, to)) {
      return numbers[slot];
    }
    // A cache, not a hash table: a clash of slots costs time, never a wrong answer.
    spellings[slot] = Arrays.copyOfRange(bytes, from, to);
    numbers[slot] = named(new String(bytes, from, to - from, StandardCharsets.ISO_8859_1));
    return numbers[slot];
  }

  private int named(String spelling) {
    return known.computeIfAbsent(
        spelling.toUpperCase(Locale.ROOT),
        name -> {
          names.add(name);
          return names.size() - 1;
        });
  }

  List<String> names() {
    return List.copyOf(names);
  }
}
