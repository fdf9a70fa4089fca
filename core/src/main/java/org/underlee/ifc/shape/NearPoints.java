package org.underlee.ifc.shape;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * Makes vertices one that are apart only by the last digits that an exporter writes: faces of a
 * closed surface then share their edges.
 */
final class NearPoints {
  /** How far apart at most, as a share of the mesh's size. */
  private static final double SHARE = 1e-8;

  private final double near;
  private final Map<Cell, Integer> first = new HashMap<>();
  private final MeshBuilder merged = new MeshBuilder();

  /** A cube as wide as points may be apart: near ones are in it or in one beside it. */
  private record Cell(long x, long y, long z) {}

  private NearPoints(double near) {
    this.near = near;
  }

  static Mesh merged(Mesh mesh) {
    double size = mesh.bounds().size().length();
    if (size == 0) {
      return mesh;
    }
    NearPoints work = new NearPoints(SHARE * size);
    int[] vertex = new int[mesh.vertexCount()];
    for (int i = 0; i < vertex.length; i++) {
      vertex[i] = work.vertex(mesh.vertex(i).minus(mesh.vertex(0)), mesh.vertex(i));
    }
    for (int t = 0; t < mesh.triangleCount(); t++) {
      work.merged.triangle(
          vertex[mesh.corner(t, 0)], vertex[mesh.corner(t, 1)], vertex[mesh.corner(t, 2)]);
    }
    return work.merged.mesh();
  }

  private int vertex(Vec3 from, Vec3 p) {
    Cell cell =
        new Cell(
            Math.round(from.x() / near), Math.round(from.y() / near), Math.round(from.z() / near));
    Integer known = known(cell);
    if (known == null) {
      known = merged.vertex(p);
      first.put(cell, known);
    }
    return known;
  }

  private @Nullable Integer known(Cell cell) {
    for (int x = -1; x <= 1; x++) {
      for (int y = -1; y <= 1; y++) {
        for (int z = -1; z <= 1; z++) {
          Integer there = first.get(new Cell(cell.x() + x, cell.y() + y, cell.z() + z));
          if (there != null) {
            return there;
          }
        }
      }
    }
    return null;
  }
}
