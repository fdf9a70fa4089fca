package org.underlee.step;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.underlee.finding.InputException;

/**
 * Number, offset and keyword of each instance, in file order, in primitive arrays: 14 bytes an
 * instance, and 4 to 16 more to find it by its number.
 */
final class StepIndex {
  private static final int FIRST_CAPACITY = 1 << 10;

  /** Offsets keep their lower 32 bits here; they only grow, so few places tell the rest. */
  private static final int LOW_BITS = 32;

  private final StepSource source;
  private final Map<String, Character> keywordNumbers = new HashMap<>();
  private long[] ids = new long[FIRST_CAPACITY];
  private int[] lowOffsets = new int[FIRST_CAPACITY];
  private char[] keywords = new char[FIRST_CAPACITY];
  private int count;

  /** Where the upper bits of the offsets grow by one: indices of instances. */
  private int[] carries = new int[0];

  private String[] names = {};
  private IdTable table = new IdTable(new long[0], 0);

  StepIndex(StepSource source) {
    this.source = source;
  }

  /** Makes room, so that a known number of instances costs no copies. */
  void reserve(int more) {
    grow(Math.min((long) count + more, source.limits.records()));
  }

  private void grow(long capacity) {
    if (capacity > ids.length) {
      ids = Arrays.copyOf(ids, (int) capacity);
      lowOffsets = Arrays.copyOf(lowOffsets, (int) capacity);
      keywords = Arrays.copyOf(keywords, (int) capacity);
    }
  }

  /** Adds the instances of a stretch that begins after all that are here. */
  void add(Stretch stretch) {
    if ((long) count + stretch.count > source.limits.records()) {
      throw tooMany(stretch);
    }
    if (count + stretch.count > ids.length) {
      grow(Math.max(2L * ids.length, (long) count + stretch.count));
    }
    char[] numbers = numbers(stretch);
    System.arraycopy(stretch.ids, 0, ids, count, stretch.count);
    for (int i = 0; i < stretch.count; i++) {
      long offset = stretch.start + stretch.distances[i];
      while (offset >>> LOW_BITS > carries.length) {
        carries = Arrays.copyOf(carries, carries.length + 1);
        carries[carries.length - 1] = count;
      }
      lowOffsets[count] = (int) offset;
      keywords[count++] = numbers[stretch.keywordNumbers[i]];
    }
  }

  /** The numbers that the keywords of a stretch have here. */
  private char[] numbers(Stretch stretch) {
    List<String> own = stretch.keywordNames();
    char[] numbers = new char[own.size()];
    for (int i = 0; i < numbers.length; i++) {
      if (keywordNumbers.size() > KeywordTable.MOST) {
        throw KeywordTable.tooMany(source, stretch.start);
      }
      numbers[i] = keywordNumbers.computeIfAbsent(own.get(i), k -> (char) keywordNumbers.size());
    }
    return numbers;
  }

  private InputException tooMany(Stretch stretch) {
    int most = source.limits.records();
    return source.error(
        stretch.start + stretch.distances[Math.max(0, most - count)],
        -1,
        "",
        "more than " + most + " instances",
        "Export the deck and what is near it as a model of its own, or allow more with"
            + " --record-limit.");
  }

  /** Makes the index ready for questions. */
  void finish() {
    ids = Arrays.copyOf(ids, count);
    lowOffsets = Arrays.copyOf(lowOffsets, count);
    keywords = Arrays.copyOf(keywords, count);
    String[] byNumber = new String[keywordNumbers.size()];
    keywordNumbers.forEach((name, number) -> byNumber[number] = name.intern());
    names = byNumber;
    table = new IdTable(ids, count);
    if (table.twice().isPresent()) {
      int second = table.twice().getAsInt();
      throw twice(table.find(ids[second]), second);
    }
  }

  private InputException twice(int first, int second) {
    long line = source.place(offset(first)).line().orElse(0);
    long again = source.place(offset(second)).line().orElse(0);
    return source.error(
        offset(second),
        ids[second],
        keyword(second),
        "#" + ids[second] + " is defined on line " + line + " and again on line " + again,
        "Maybe two models were pasted together: export the model again as one file.");
  }

  int count() {
    return count;
  }

  long id(int index) {
    return ids[index];
  }

  long offset(int index) {
    int upper = 0;
    while (upper < carries.length && carries[upper] <= index) {
      upper++;
    }
    return ((long) upper << LOW_BITS) | (lowOffsets[index] & 0xFFFF_FFFFL);
  }

  String keyword(int index) {
    return names[keywords[index]];
  }

  int find(long id) {
    return table.find(id);
  }

  int[] ofKeyword(String keyword) {
    return keywordNumbers.containsKey(keyword) ? ofKeywords(keyword::equals) : new int[0];
  }

  int[] ofKeywords(Predicate<String> keyword) {
    boolean[] wanted = new boolean[names.length];
    for (int i = 0; i < wanted.length; i++) {
      wanted[i] = keyword.test(names[i]);
    }
    int[] found = new int[16];
    int n = 0;
    for (int i = 0; i < count; i++) {
      if (wanted[keywords[i]]) {
        if (n == found.length) {
          found = Arrays.copyOf(found, 2 * n);
        }
        found[n++] = i;
      }
    }
    return Arrays.copyOf(found, n);
  }
}
