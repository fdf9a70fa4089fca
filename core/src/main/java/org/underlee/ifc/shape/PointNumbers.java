package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec3;

/**
 * Numbers points from 0, those with the same coordinates alike. An open table instead of a hash
 * map: cutting asks for every vertex of a mesh at every plane.
 */
final class PointNumbers {
  private static final int FIRST_SLOTS = 1 << 6;

  private final List<Vec3> points = new ArrayList<>();

  /**
   * One more than the number of the point there; 0 where there is none. Never more than half full.
   */
  private int[] slots = new int[FIRST_SLOTS];

  /** In the order of their numbers. */
  List<Vec3> points() {
    return points;
  }

  int of(Vec3 p) {
    // Adding zero turns −0 into 0, which are one place but two numbers to a hash.
    Vec3 key = new Vec3(p.x() + 0.0, p.y() + 0.0, p.z() + 0.0);
    int slot = slot(key);
    if (slots[slot] == 0) {
      points.add(key);
      slots[slot] = points.size();
      if (2 * points.size() > slots.length) {
        grow();
        return points.size() - 1;
      }
    }
    return slots[slot] - 1;
  }

  /** Where a point is or would go. */
  private int slot(Vec3 p) {
    int hash = p.hashCode();
    int slot = (hash ^ (hash >>> 16)) & (slots.length - 1);
    while (slots[slot] != 0 && !points.get(slots[slot] - 1).equals(p)) {
      slot = (slot + 1) & (slots.length - 1);
    }
    return slot;
  }

  private void grow() {
    slots = new int[2 * slots.length];
    for (int i = 0; i < points.size(); i++) {
      slots[slot(points.get(i))] = i + 1;
    }
  }
}
