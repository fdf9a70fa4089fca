package org.underlee.geom;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Pairs of whole numbers, as many as come. */
final class IntPairs {
  private static final int FIRST = 32;

  private int @Nullable [] pairs;
  private int size;

  void add(int a, int b) {
    int[] room = pairs;
    if (room == null) {
      room = new int[FIRST];
    } else if (size == room.length) {
      room = Arrays.copyOf(room, 2 * size);
    }
    room[size++] = a;
    room[size++] = b;
    pairs = room;
  }

  boolean isEmpty() {
    return size == 0;
  }

  int[] trimmed() {
    return pairs == null ? new int[0] : Arrays.copyOf(pairs, size);
  }

  static int[] joined(List<IntPairs> parts) {
    List<int[]> all = new ArrayList<>();
    int total = 0;
    for (IntPairs part : parts) {
      all.add(part.trimmed());
      total += part.size;
    }
    int[] joined = new int[total];
    int at = 0;
    for (int[] part : all) {
      System.arraycopy(part, 0, joined, at, part.length);
      at += part.length;
    }
    return joined;
  }
}
