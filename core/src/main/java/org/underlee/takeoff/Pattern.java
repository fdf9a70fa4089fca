package org.underlee.takeoff;

import java.util.Arrays;

/**
 * What is cut from one stick: how many pieces of each size, and from which blocks. A block is what
 * one cross-cut gives: a single piece, or several side by side that are ripped apart.
 */
final class Pattern {
  private final int offer;
  private final int[] counts;
  private final int[] blocks;

  /**
   * A pattern.
   *
   * @param offer which of the lengths sold or on hand
   * @param counts of each size, then what it takes of each limited supply
   * @param blocks that give them, by number in the order
   */
  Pattern(int offer, int[] counts, int[] blocks) {
    this.offer = offer;
    this.counts = counts.clone();
    this.blocks = blocks.clone();
  }

  int offer() {
    return offer;
  }

  int count(int size) {
    return counts[size];
  }

  int[] blocks() {
    return blocks.clone();
  }

  boolean fits(int[] wanted) {
    return fits(wanted, 0);
  }

  /** Whether no more is taken than is wanted, from a row on. */
  boolean fits(int[] wanted, int from) {
    for (int i = from; i < counts.length; i++) {
      if (counts[i] > wanted[i]) {
        return false;
      }
    }
    return true;
  }

  /** How many sticks may be cut to it before something is cut that is not wanted. */
  int timesIn(int[] wanted) {
    int times = Integer.MAX_VALUE;
    for (int i = 0; i < counts.length; i++) {
      times = counts[i] > 0 ? Math.min(times, wanted[i] / counts[i]) : times;
    }
    return times;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Pattern p && p.offer == offer && Arrays.equals(p.counts, counts);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(counts) + offer;
  }
}
