package org.underlee.drainage;

import java.util.LinkedHashSet;
import java.util.Set;
import org.underlee.geom.Vec3;

/** The triangles of one plane, of which only the edges are kept that no two of them share. */
final class FaceOutline {
  /** From one vertex to another, the way round that its triangle goes. */
  record Edge(int from, int to) {
    Edge turned() {
      return new Edge(to, from);
    }
  }

  /** In the order in which they came. */
  final Set<Edge> edges = new LinkedHashSet<>();

  Vec3 normal = Vec3.ZERO;
  Vec3 on = Vec3.ZERO;
  double area;

  static Edge edge(int[] corners, int k) {
    return new Edge(corners[k], corners[(k + 1) % 3]);
  }

  /** How many of a triangle's edges are edges of the outline, the other way round. */
  int shared(int[] corners) {
    int count = 0;
    for (int k = 0; k < 3; k++) {
      count += edges.contains(edge(corners, k).turned()) ? 1 : 0;
    }
    return count;
  }

  /** Adds a triangle: an edge between two of the plane is no edge of the outline. */
  void toggle(int[] corners) {
    for (int k = 0; k < 3; k++) {
      Edge edge = edge(corners, k);
      if (edge.from != edge.to && !edges.remove(edge.turned())) {
        edges.add(edge);
      }
    }
  }
}
