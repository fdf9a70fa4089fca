package org.underlee.ifc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;

/** Which instance numbers go with which, in the order of the file, without an object for each. */
final class IdPairs {
  private static final int FIRST_CAPACITY = 64;

  /** 2⁶⁴ over the golden ratio: Knuth, "The Art of Computer Programming", volume 3, 6.4. */
  private static final long SPREAD = 0x9E3779B97F4A7C15L;

  private long[] keys = new long[FIRST_CAPACITY];
  private long[] values = new long[FIRST_CAPACITY];

  /** The pair before it whose key has the same place; −1 for none. */
  private int[] before = new int[FIRST_CAPACITY];

  /** The last pair whose key has a place; −1 for none. */
  private int[] last = places(FIRST_CAPACITY);

  private int count;

  void add(long key, long value) {
    if (count == keys.length) {
      grow();
    }
    keys[count] = key;
    values[count] = value;
    link(count++);
  }

  private void grow() {
    keys = Arrays.copyOf(keys, 2 * count);
    values = Arrays.copyOf(values, 2 * count);
    before = new int[2 * count];
    last = places(2 * count);
    for (int i = 0; i < count; i++) {
      link(i);
    }
  }

  private static int[] places(int count) {
    int[] places = new int[count];
    Arrays.fill(places, -1);
    return places;
  }

  private void link(int pair) {
    int place = place(keys[pair]);
    before[pair] = last[place];
    last[place] = pair;
  }

  private int place(long key) {
    return (int) ((key * SPREAD) >>> Integer.SIZE) & (last.length - 1);
  }

  /** The value of the first pair with a key. */
  OptionalLong first(long key) {
    OptionalLong first = OptionalLong.empty();
    for (int i = last[place(key)]; i >= 0; i = before[i]) {
      if (keys[i] == key) {
        first = OptionalLong.of(values[i]);
      }
    }
    return first;
  }

  /** The values of all pairs with a key. */
  List<Long> all(long key) {
    List<Long> all = new ArrayList<>();
    for (int i = last[place(key)]; i >= 0; i = before[i]) {
      if (keys[i] == key) {
        all.add(values[i]);
      }
    }
    Collections.reverse(all);
    return Collections.unmodifiableList(all);
  }
}
