package org.underlee.step;

import java.util.Arrays;
import java.util.List;

/** Number, offset and keyword of each instance, in file order, in primitive arrays. */
final class StepIndex {
  private static final int FIRST_CAPACITY = 1 << 10;

  private final KeywordTable keywords = new KeywordTable();
  private long[] ids = new long[FIRST_CAPACITY];
  private int[] offsets = new int[FIRST_CAPACITY];
  private int[] keywordNumbers = new int[FIRST_CAPACITY];
  private int count;

  /** Index + 1 of an instance by its number, open addressing; 0 is free. */
  private int[] slots = new int[0];

  private List<String> names = List.of();

  void add(long id, int offset, int keywordNumber) {
    if (count == ids.length) {
      ids = Arrays.copyOf(ids, 2 * count);
      offsets = Arrays.copyOf(offsets, 2 * count);
      keywordNumbers = Arrays.copyOf(keywordNumbers, 2 * count);
    }
    ids[count] = id;
    offsets[count] = offset;
    keywordNumbers[count++] = keywordNumber;
  }

  int keywordNumber(byte[] bytes, int from, int to) {
    return keywords.number(bytes, from, to);
  }

  /** Makes the index ready for questions. */
  void finish(StepSource source) {
    ids = Arrays.copyOf(ids, count);
    offsets = Arrays.copyOf(offsets, count);
    keywordNumbers = Arrays.copyOf(keywordNumbers, count);
    names = keywords.names();
    slots = new int[Integer.highestOneBit(Math.max(1, count)) << 2];
    for (int i = 0; i < count; i++) {
      int slot = slot(ids[i]);
      if (slots[slot] != 0) {
        throw twice(source, slots[slot] - 1, i);
      }
      slots[slot] = i + 1;
    }
  }

  private RuntimeException twice(StepSource source, int first, int second) {
    long line = source.place(offsets[first]).line().orElse(0);
    long again = source.place(offsets[second]).line().orElse(0);
    return source.error(
        offsets[second],
        ids[second],
        "#" + ids[second] + " is defined on line " + line + " and again on line " + again,
        "Maybe two models were pasted together: export the model again as one file.");
  }

  int count() {
    return count;
  }

  long id(int index) {
    return ids[index];
  }

  int offset(int index) {
    return offsets[index];
  }

  String keyword(int index) {
    return names.get(keywordNumbers[index]);
  }

  int find(long id) {
    return slots[slot(id)] - 1;
  }

  int[] ofKeyword(String keyword) {
    int number = names.indexOf(keyword);
    int[] found = new int[16];
    int n = 0;
    for (int i = 0; i < count && number >= 0; i++) {
      if (keywordNumbers[i] == number) {
        if (n == found.length) {
          found = Arrays.copyOf(found, 2 * n);
        }
        found[n++] = i;
      }
    }
    return Arrays.copyOf(found, n);
  }

  /** The slot that holds the number, or the free one where it would go. */
  private int slot(long id) {
    // Fibonacci hashing: consecutive numbers spread over the table.
    int slot = (int) ((id * 0x9E3779B97F4A7C15L) >>> 33) & (slots.length - 1);
    while (slots[slot] != 0 && ids[slots[slot] - 1] != id) {
      slot = (slot + 1) & (slots.length - 1);
    }
    return slot;
  }
}
