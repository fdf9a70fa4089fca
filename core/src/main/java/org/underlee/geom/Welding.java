package org.underlee.geom;

import java.util.HashMap;
import java.util.Map;

/** Finds the vertices of a mesh that are one place, to a hundredth of a millimetre. */
final class Welding {
  private static final double CELLS_PER_METRE = 1e5;

  /** Up to this many vertices each is compared with each, which is quicker than a table. */
  private static final int FEW = 24;

  private Welding() {}

  /** For each vertex, the first vertex at the same place. */
  static int[] places(Mesh mesh) {
    return mesh.vertexCount() <= FEW ? byComparing(mesh) : byCells(mesh);
  }

  private static int[] byComparing(Mesh mesh) {
    int[] place = new int[mesh.vertexCount()];
    for (int i = 0; i < place.length; i++) {
      place[i] = i;
      for (int j = 0; j < i; j++) {
        if (place[j] == j && areOne(mesh, i, j)) {
          place[i] = j;
          break;
        }
      }
    }
    return place;
  }

  private static boolean areOne(Mesh mesh, int i, int j) {
    double half = 0.5 / CELLS_PER_METRE;
    return Math.abs(mesh.coordinate(i, 0) - mesh.coordinate(j, 0)) <= half
        && Math.abs(mesh.coordinate(i, 1) - mesh.coordinate(j, 1)) <= half
        && Math.abs(mesh.coordinate(i, 2) - mesh.coordinate(j, 2)) <= half;
  }

  private static int[] byCells(Mesh mesh) {
    record Cell(long x, long y, long z) {}
    Map<Cell, Integer> first = new HashMap<>();
    int[] place = new int[mesh.vertexCount()];
    Vec3 origin = mesh.vertex(0);
    for (int i = 0; i < place.length; i++) {
      Vec3 p = mesh.vertex(i).minus(origin).times(CELLS_PER_METRE);
      int own = i;
      place[i] =
          first.computeIfAbsent(
              new Cell(Math.round(p.x()), Math.round(p.y()), Math.round(p.z())), c -> own);
    }
    return place;
  }
}
