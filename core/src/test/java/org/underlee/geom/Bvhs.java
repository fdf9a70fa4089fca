package org.underlee.geom;

import java.util.ArrayList;
import java.util.List;

/** What a tree finds, in the order of {@link SlowTriangles}. */
public final class Bvhs {
  private Bvhs() {}

  public static List<Long> pairs(Mesh a, Mesh b) {
    int[] found = Bvh.of(a).meeting(Bvh.of(b));
    List<Long> pairs = new ArrayList<>();
    for (int i = 0; i < found.length; i += 2) {
      pairs.add((long) found[i] * b.triangleCount() + found[i + 1]);
    }
    pairs.sort(null);
    return pairs;
  }
}
