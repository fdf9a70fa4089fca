package org.underlee.drainage;

import java.util.Arrays;

/** Where water ends, as shares of the ends; they add up to one. */
final class Fate {
  private final int[] sinks;
  private final double[] shares;

  private Fate(int[] sinks, double[] shares) {
    this.sinks = sinks;
    this.shares = shares;
  }

  static Fate of(int sink) {
    return new Fate(new int[] {sink}, new double[] {1});
  }

  /**
   * The first {@code n} of some ends together.
   *
   * @param n at least one
   */
  static Fate mixed(Fate[] ends, double[] weights, int n) {
    if (areOne(ends, n)) {
      return ends[0];
    }
    double total = 0;
    int most = 0;
    for (int i = 0; i < n; i++) {
      total += weights[i];
      most += ends[i].sinks.length;
    }
    Fate sum = new Fate(new int[most], new double[most]);
    int count = 0;
    for (int i = 0; i < n; i++) {
      Fate end = ends[i];
      for (int k = 0; k < end.sinks.length; k++) {
        count = sum.add(count, end.sinks[k], end.shares[k] * weights[i] / total);
      }
    }
    return new Fate(Arrays.copyOf(sum.sinks, count), Arrays.copyOf(sum.shares, count));
  }

  private static boolean areOne(Fate[] ends, int n) {
    for (int i = 1; i < n; i++) {
      if (!ends[0].isOneWith(ends[i])) {
        return false;
      }
    }
    return true;
  }

  /** Whether both are the same, so that a mixture of the two is as well. */
  private boolean isOneWith(Fate other) {
    return this == other
        || (sinks.length == 1 && other.sinks.length == 1 && sinks[0] == other.sinks[0]);
  }

  /** Adds to the first {@code count} ends, which are in order of their sinks; gives how many. */
  private int add(int count, int sink, double share) {
    int at = count;
    while (at > 0 && sinks[at - 1] > sink) {
      at--;
    }
    if (at > 0 && sinks[at - 1] == sink) {
      shares[at - 1] += share;
      return count;
    }
    System.arraycopy(sinks, at, sinks, at + 1, count - at);
    System.arraycopy(shares, at, shares, at + 1, count - at);
    sinks[at] = sink;
    shares[at] = share;
    return count + 1;
  }

  int ends() {
    return sinks.length;
  }

  int sink(int end) {
    return sinks[end];
  }

  double share(int end) {
    return shares[end];
  }

  /**
   * Whether any of the water goes to one of some ends.
   *
   * @param which by the number of the end
   */
  boolean leadsTo(boolean[] which) {
    for (int sink : sinks) {
      if (which[sink]) {
        return true;
      }
    }
    return false;
  }

  /** The end that takes most. */
  int main() {
    int most = 0;
    for (int i = 1; i < shares.length; i++) {
      most = shares[i] > shares[most] ? i : most;
    }
    return sinks[most];
  }
}
