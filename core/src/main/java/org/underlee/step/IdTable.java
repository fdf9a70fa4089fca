package org.underlee.step;

import java.util.Arrays;
import java.util.OptionalInt;

/**
 * Finds an instance by its number: by a table of all numbers where they lie close together, as most
 * programs write them; else by a sorted copy, whose time no choice of numbers can spoil.
 */
final class IdTable {
  /** Free places for each used one up to which a table is worth its memory. */
  private static final int SPARSENESS = 4;

  private static final int SMALL = 1 << 10;

  /** Numbers in ascending order; empty when they lie close together. */
  private final long[] sorted;

  /** Index + 1 of an instance, by its number or by its place in the order; 0 is free. */
  private final int[] places;

  private int twice = -1;

  IdTable(long[] ids, int count) {
    long highest = 0;
    for (int i = 0; i < count; i++) {
      highest = Math.max(highest, ids[i]);
    }
    boolean close = highest < (long) SPARSENESS * count + SMALL && highest < Integer.MAX_VALUE - 8;
    sorted = close ? new long[0] : Arrays.copyOf(ids, count);
    Arrays.sort(sorted);
    places = new int[close ? (int) highest + 1 : count];
    for (int i = 0; i < count && twice < 0; i++) {
      int place = place(ids[i]);
      if (places[place] != 0) {
        twice = i;
      } else {
        places[place] = i + 1;
      }
    }
  }

  /** The first instance whose number was used before. */
  OptionalInt twice() {
    return twice < 0 ? OptionalInt.empty() : OptionalInt.of(twice);
  }

  /** Index of the instance with a number, or −1. */
  int find(long id) {
    int place = place(id);
    return place < 0 || place >= places.length ? -1 : places[place] - 1;
  }

  private int place(long id) {
    if (sorted.length > 0) {
      return Arrays.binarySearch(sorted, id);
    }
    return id < 0 || id >= places.length ? -1 : (int) id;
  }
}
