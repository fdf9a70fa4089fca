package org.underlee.drainage;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * What is known of each layer while water is followed: its fate, and the pool that took it last. It
 * is as long as there are layers, so cases that follow each other use one again; each writes few.
 */
final class FateBoard {
  private final @Nullable Fate[] fates;
  private final int[] holders;
  private int[] written = new int[256];
  private int count;
  private int pools;

  FateBoard(int layers) {
    this.fates = new Fate[layers];
    this.holders = new int[layers];
  }

  /** As new, but that pools go on being told apart. */
  FateBoard clear() {
    for (int i = 0; i < count; i++) {
      fates[written[i]] = null;
    }
    count = 0;
    return this;
  }

  @Nullable Fate get(int layer) {
    return fates[layer];
  }

  void set(int layer, Fate fate) {
    if (fates[layer] == null) {
      written = count == written.length ? Arrays.copyOf(written, 2 * count) : written;
      written[count++] = layer;
    }
    fates[layer] = fate;
  }

  /** A number that no pool had. */
  int nextPool() {
    return ++pools;
  }

  boolean isIn(int layer, int pool) {
    return holders[layer] == pool;
  }

  void put(int layer, int pool) {
    holders[layer] = pool;
  }
}
