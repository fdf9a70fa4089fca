package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;

/**
 * Splits an outline into convex parts: its triangles, put together again as long as they stay
 * convex. At most four times as many as the fewest there could be (Hertel and Mehlhorn 1983).
 */
final class ConvexParts {
  private ConvexParts() {}

  /** Counter-clockwise rings that together cover the outline and do not overlap. */
  static List<List<Vec2>> of(Outline outline) {
    if (outline.holes().isEmpty() && FlatFace.isConvex(outline.outer())) {
      return List.of(outline.outer());
    }
    Triangulation flat = Triangulation.of(outline);
    List<List<Vec2>> parts = new ArrayList<>();
    for (int[] t : flat.triangles()) {
      add(
          parts,
          List.of(flat.points().get(t[0]), flat.points().get(t[1]), flat.points().get(t[2])));
    }
    return parts;
  }

  /** Adds a part, joined to those beside it where the whole is convex. */
  private static void add(List<List<Vec2>> parts, List<Vec2> part) {
    for (int i = 0; i < parts.size(); i++) {
      List<Vec2> joined = joined(parts.get(i), part);
      if (!joined.isEmpty()) {
        parts.remove(i);
        add(parts, joined);
        return;
      }
    }
    parts.add(part);
  }

  /** Two rings along the one edge that they share; empty when there is none or a hollow corner. */
  private static List<Vec2> joined(List<Vec2> a, List<Vec2> b) {
    for (int i = 0; i < a.size(); i++) {
      int j = b.indexOf(a.get((i + 1) % a.size()));
      if (j >= 0 && b.get((j + 1) % b.size()).equals(a.get(i))) {
        List<Vec2> ring = new ArrayList<>();
        for (int k = 1; k <= a.size(); k++) {
          ring.add(a.get((i + k) % a.size()));
        }
        for (int k = 2; k < b.size(); k++) {
          ring.add(b.get((j + k) % b.size()));
        }
        return FlatFace.isConvex(ring) ? ring : List.of();
      }
    }
    return List.of();
  }
}
