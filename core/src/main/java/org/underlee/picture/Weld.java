package org.underlee.picture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * Finds the vertices of a mesh that are one place: exporters repeat a vertex for each face, and a
 * model far from the origin carries rounding noise. Cells hash the places; a place near a cell's
 * border is looked for on both sides of it.
 */
final class Weld {
  /** Cells are this many tolerances wide, so that nearly every place needs one look only. */
  private static final double CELL = 16;

  private final Mesh mesh;
  private final double tolerance;
  private final Map<Cell, List<Integer>> cells = new HashMap<>();

  private Weld(Mesh mesh, double tolerance) {
    this.mesh = mesh;
    this.tolerance = tolerance;
  }

  private record Cell(long x, long y, long z) {}

  /** For each vertex, the number of the first vertex at its place. */
  static int[] firstAtPlace(Mesh mesh, double tolerance) {
    Weld weld = new Weld(mesh, tolerance);
    int[] first = new int[mesh.vertexCount()];
    for (int i = 0; i < first.length; i++) {
      first[i] = weld.find(i);
    }
    return first;
  }

  private int find(int vertex) {
    Vec3 p = mesh.vertex(vertex);
    Vec3 reach = new Vec3(tolerance, tolerance, tolerance);
    Cell low = cell(p.minus(reach));
    Cell high = cell(p.plus(reach));
    for (long x = low.x; x <= high.x; x++) {
      for (long y = low.y; y <= high.y; y++) {
        for (long z = low.z; z <= high.z; z++) {
          for (int other : cells.getOrDefault(new Cell(x, y, z), List.of())) {
            if (mesh.vertex(other).distance(p) <= tolerance) {
              return other;
            }
          }
        }
      }
    }
    cells.computeIfAbsent(cell(p), c -> new ArrayList<>(1)).add(vertex);
    return vertex;
  }

  private Cell cell(Vec3 p) {
    double size = CELL * tolerance;
    return new Cell(
        (long) Math.floor(p.x() / size),
        (long) Math.floor(p.y() / size),
        (long) Math.floor(p.z() / size));
  }
}
