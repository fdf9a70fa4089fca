package org.underlee.picture;

import java.util.Arrays;

/**
 * For each band of a picture, the numbers of those things of a chunk that meet it, in their order.
 * Only numbers are kept: what is drawn is worked out when its band is, and never goes through
 * memory.
 */
final class BandLists {
  private int[] starts = new int[0];
  private int[] numbers = new int[0];

  /** Where the numbers of a band begin; they end where the next band's begin. */
  int from(int band) {
    return starts[band];
  }

  int number(int at) {
    return numbers[at];
  }

  /** Takes over what was gathered, in place of what was there before. */
  void take(Gathered gathered, int bands) {
    int[] counts = new int[bands + 1];
    for (int i = 0; i < gathered.size; i++) {
      for (int band = gathered.first[i]; band <= gathered.last[i]; band++) {
        counts[band + 1]++;
      }
    }
    for (int band = 0; band < bands; band++) {
      counts[band + 1] += counts[band];
    }
    starts = counts;
    if (numbers.length < counts[bands]) {
      numbers = new int[counts[bands] * 5 / 4];
    }
    place(gathered, Arrays.copyOf(counts, bands));
  }

  private void place(Gathered gathered, int[] next) {
    for (int i = 0; i < gathered.size; i++) {
      for (int band = gathered.first[i]; band <= gathered.last[i]; band++) {
        numbers[next[band]++] = gathered.number[i];
      }
    }
  }

  /** Numbers with the bands that they meet, as they are found. */
  static final class Gathered {
    private final int[] number;
    private final int[] first;
    private final int[] last;
    private int size;

    Gathered(int most) {
      number = new int[most];
      first = new int[most];
      last = new int[most];
    }

    void clear() {
      size = 0;
    }

    void add(int what, int firstBand, int lastBand) {
      number[size] = what;
      first[size] = firstBand;
      last[size] = lastBand;
      size++;
    }
  }
}
