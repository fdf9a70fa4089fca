package org.underlee.geom;

import java.util.List;
import java.util.stream.IntStream;

/** Goes down two trees together to the triangles that meet. */
final class BvhPairs {
  /** Pairs of nodes that a search is split into, at least, to be shared out between threads. */
  private static final int TASKS = 64;

  /** A tree this deep would hold more triangles than an array. */
  private static final int DEPTH = 64;

  private final Bvh one;
  private final Bvh other;

  BvhPairs(Bvh one, Bvh other) {
    this.one = one;
    this.other = other;
  }

  /** All pairs, in an order that is the same for any number of threads. */
  int[] all() {
    int[] tasks = tasks();
    List<IntPairs> parts =
        IntStream.range(0, tasks.length / 2)
            .parallel()
            .mapToObj(t -> collect(tasks[2 * t], tasks[2 * t + 1], false))
            .toList();
    return IntPairs.joined(parts);
  }

  boolean any() {
    return !collect(0, 0, true).isEmpty();
  }

  /** Pairs of nodes whose boxes meet and that together hold all that meet. */
  private int[] tasks() {
    int[] level = {0, 0};
    while (level.length < 2 * TASKS) {
      IntPairs next = new IntPairs();
      boolean split = false;
      for (int i = 0; i < level.length; i += 2) {
        split |= descend(level[i], level[i + 1], next);
      }
      level = next.trimmed();
      if (!split) {
        break;
      }
    }
    return level;
  }

  private boolean descend(int a, int b, IntPairs into) {
    if (!one.boxesMeet(a, other, b)) {
      return false;
    }
    if (one.isLeaf(a) && other.isLeaf(b)) {
      into.add(a, b);
      return false;
    }
    if (one.isSplitFirst(a, other, b)) {
      into.add(a + 1, b);
      into.add(one.right[a], b);
    } else {
      into.add(a, b + 1);
      into.add(a, other.right[b]);
    }
    return true;
  }

  /**
   * What meets below two nodes.
   *
   * @param first whether one pair is enough
   */
  private IntPairs collect(int startA, int startB, boolean first) {
    IntPairs found = new IntPairs();
    int[] stack = new int[4 * DEPTH];
    int top = 0;
    stack[top++] = startA;
    stack[top++] = startB;
    while (top > 0 && !(first && !found.isEmpty())) {
      int b = stack[--top];
      int a = stack[--top];
      if (!one.boxesMeet(a, other, b)) {
        continue;
      }
      if (one.isLeaf(a) && other.isLeaf(b)) {
        leaves(a, b, found);
      } else if (one.isSplitFirst(a, other, b)) {
        stack[top++] = one.right[a];
        stack[top++] = b;
        stack[top++] = a + 1;
        stack[top++] = b;
      } else {
        stack[top++] = a;
        stack[top++] = other.right[b];
        stack[top++] = a;
        stack[top++] = b + 1;
      }
    }
    return found;
  }

  private void leaves(int a, int b, IntPairs found) {
    for (int i = one.from[a]; i < one.end(a); i++) {
      for (int j = other.from[b]; j < other.end(b); j++) {
        if (spansMeet(one.corners, 9 * i, other.corners, 9 * j)
            && TrianglePair.meet(one.corners, 9 * i, other.corners, 9 * j)) {
          found.add(one.numbers[i], other.numbers[j]);
        }
      }
    }
  }

  private static boolean spansMeet(double[] p, int a, double[] q, int b) {
    for (int axis = 0; axis < 3; axis++) {
      double p0 = p[a + axis];
      double p1 = p[a + 3 + axis];
      double p2 = p[a + 6 + axis];
      double q0 = q[b + axis];
      double q1 = q[b + 3 + axis];
      double q2 = q[b + 6 + axis];
      if (Math.max(p0, Math.max(p1, p2)) < Math.min(q0, Math.min(q1, q2))
          || Math.max(q0, Math.max(q1, q2)) < Math.min(p0, Math.min(p1, p2))) {
        return false;
      }
    }
    return true;
  }
}
