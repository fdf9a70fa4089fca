package org.underlee.step;

import java.util.Arrays;
import java.util.List;

/**
 * Instances that follow each other in the text: numbers, places and keywords in primitive arrays,
 * and what was noticed on the way.
 */
final class Stretch {
  /** Bytes that an instance usually takes. */
  private static final int USUAL_INSTANCE = 64;

  private static final int LEAST_CAPACITY = 16;

  /** Where the first instance begins, from which the others are measured. */
  final long start;

  /** Where reading goes on after the last. */
  long stop;

  final KeywordTable keywords = new KeywordTable();
  final Noticed noticed = new Noticed();
  long[] ids;
  int[] distances;
  char[] keywordNumbers;
  int count;

  Stretch(long start, int expectedBytes) {
    this.start = start;
    this.stop = start;
    int capacity = LEAST_CAPACITY + expectedBytes / USUAL_INSTANCE;
    ids = new long[capacity];
    distances = new int[capacity];
    keywordNumbers = new char[capacity];
  }

  void add(long id, int distance, char keyword) {
    if (count == ids.length) {
      ids = Arrays.copyOf(ids, 2 * count);
      distances = Arrays.copyOf(distances, 2 * count);
      keywordNumbers = Arrays.copyOf(keywordNumbers, 2 * count);
    }
    ids[count] = id;
    distances[count] = distance;
    keywordNumbers[count++] = keyword;
  }

  List<String> keywordNames() {
    return keywords.names();
  }
}
