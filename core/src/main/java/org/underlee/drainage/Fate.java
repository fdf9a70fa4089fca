package org.underlee.drainage;

import java.util.List;
import java.util.TreeMap;

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

  static Fate mixed(List<Fate> ends, List<Double> weights) {
    double total = weights.stream().mapToDouble(w -> w).sum();
    TreeMap<Integer, Double> sum = new TreeMap<>();
    for (int i = 0; i < ends.size(); i++) {
      for (int k = 0; k < ends.get(i).sinks.length; k++) {
        double share = ends.get(i).shares[k] * weights.get(i) / total;
        sum.merge(ends.get(i).sinks[k], share, Double::sum);
      }
    }
    return new Fate(
        sum.keySet().stream().mapToInt(s -> s).toArray(),
        sum.values().stream().mapToDouble(s -> s).toArray());
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

  /** The end that takes most. */
  int main() {
    int most = 0;
    for (int i = 1; i < shares.length; i++) {
      most = shares[i] > shares[most] ? i : most;
    }
    return sinks[most];
  }
}
