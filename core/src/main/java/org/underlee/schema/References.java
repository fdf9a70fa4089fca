package org.underlee.schema;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import org.underlee.step.StepFile;
import org.underlee.step.StepValue;

/**
 * Who refers to whom in a file, in primitive arrays: for each instance, those that refer to it, and
 * by which attribute.
 */
final class References {
  /** Where the referrers of an instance begin. */
  private final int[] starts;

  private final int[] referrers;

  /** The position of the attribute that refers; no entity of IFC has more than these hold. */
  private final byte[] positions;

  private References(int[] starts) {
    this.starts = starts;
    this.referrers = new int[starts[starts.length - 1]];
    this.positions = new byte[referrers.length];
  }

  private interface Found {
    void accept(int target, int position);
  }

  /** Reads the whole file twice: to count, and to fill. */
  static References of(StepFile file) {
    int[] starts = new int[file.count() + 1];
    for (int i = 0; i < file.count(); i++) {
      targets(file, i, (target, position) -> starts[target + 1]++);
    }
    Arrays.parallelPrefix(starts, Integer::sum);
    References all = new References(starts);
    int[] next = Arrays.copyOf(starts, file.count());
    for (int i = 0; i < file.count(); i++) {
      int from = i;
      targets(file, i, (target, position) -> all.put(next[target]++, from, position));
    }
    return all;
  }

  private void put(int at, int referrer, int position) {
    referrers[at] = referrer;
    positions[at] = (byte) position;
  }

  private static void targets(StepFile file, int instance, Found found) {
    List<StepValue> values = file.decode(instance).values();
    for (int i = 0; i < Math.min(values.size(), Byte.MAX_VALUE); i++) {
      targets(file, values.get(i), i, found);
    }
  }

  private static void targets(StepFile file, StepValue value, int position, Found found) {
    if (value instanceof StepValue.Reference r) {
      int target = file.find(r.id());
      if (target >= 0) {
        found.accept(target, position);
      }
    } else if (value instanceof StepValue.ListOf list) {
      list.values().forEach(v -> targets(file, v, position, found));
    } else if (value instanceof StepValue.Typed typed) {
      targets(file, typed.value(), position, found);
    }
  }

  /**
   * Those that refer to an instance, each once, in file order.
   *
   * @param by the position of the attribute, by the referrer's index
   */
  int[] to(int instance, IntUnaryOperator by) {
    return IntStream.range(starts[instance], starts[instance + 1])
        .filter(i -> by.applyAsInt(referrers[i]) == positions[i])
        .map(i -> referrers[i])
        .distinct()
        .toArray();
  }
}
