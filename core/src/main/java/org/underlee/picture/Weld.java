package org.underlee.picture;

import java.util.Arrays;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * Finds the vertices of a mesh that are one place: exporters repeat a vertex for each face, and a
 * model far from the origin carries rounding noise. Cells hash the places; a place near a cell's
 * border is looked for on both sides of it.
 *
 * <p>Cells are kept in arrays that serve one mesh after the other, as every mesh of every picture
 * of a drag goes through: slot {@code i} of the table is a cell with the first and the last of its
 * places, and {@code next} leads from one place to the next of the same cell. For one thread at a
 * time.
 */
final class Weld {
  /** Cells are this many tolerances wide, so that nearly every place needs one look only. */
  private static final double CELL = 16;

  private static final int NONE = -1;

  private Mesh mesh = Mesh.EMPTY;
  private double tolerance;
  private int mask;
  private long[] cells = {};
  private int[] first = {};
  private int[] last = {};
  private int[] next = {};
  private int[] places = {};

  /**
   * For each vertex, the number of the first vertex at its place. The array may be longer than the
   * mesh has vertices, and holds until the next mesh.
   */
  int[] firstAtPlace(Mesh of, double within) {
    start(of, within);
    for (int i = 0; i < mesh.vertexCount(); i++) {
      places[i] = find(i);
    }
    return places;
  }

  private void start(Mesh of, double within) {
    mesh = of;
    tolerance = within;
    int size = Math.max(2, Integer.highestOneBit(mesh.vertexCount()) * 4);
    mask = size - 1;
    if (first.length < size) {
      cells = new long[3 * size];
      first = new int[size];
      last = new int[size];
    }
    if (next.length < mesh.vertexCount()) {
      next = new int[mesh.vertexCount()];
      places = new int[mesh.vertexCount()];
    }
    Arrays.fill(first, 0, size, NONE);
    Arrays.fill(next, 0, mesh.vertexCount(), NONE);
  }

  private int find(int vertex) {
    Vec3 p = mesh.vertex(vertex);
    long xEnd = cell(p.x() + tolerance);
    long yEnd = cell(p.y() + tolerance);
    long zEnd = cell(p.z() + tolerance);
    for (long x = cell(p.x() - tolerance); x <= xEnd; x++) {
      for (long y = cell(p.y() - tolerance); y <= yEnd; y++) {
        for (long z = cell(p.z() - tolerance); z <= zEnd; z++) {
          int same = within(slot(x, y, z), p);
          if (same != NONE) {
            return same;
          }
        }
      }
    }
    add(vertex, cell(p.x()), cell(p.y()), cell(p.z()));
    return vertex;
  }

  /** The first place of a cell that is the same as a point. */
  private int within(int slot, Vec3 p) {
    for (int other = first[slot]; other != NONE; other = next[other]) {
      if (mesh.vertex(other).distance(p) <= tolerance) {
        return other;
      }
    }
    return NONE;
  }

  private void add(int vertex, long x, long y, long z) {
    int slot = slot(x, y, z);
    if (first[slot] == NONE) {
      first[slot] = vertex;
      cells[3 * slot] = x;
      cells[3 * slot + 1] = y;
      cells[3 * slot + 2] = z;
    } else {
      next[last[slot]] = vertex;
    }
    last[slot] = vertex;
  }

  /** Where a cell is in the table, or would be. */
  private int slot(long x, long y, long z) {
    long mixed = ((x * 31 + y) * 31 + z) * 0x9E3779B97F4A7C15L;
    int slot = (int) (mixed >>> 32) & mask;
    while (first[slot] != NONE
        && (cells[3 * slot] != x || cells[3 * slot + 1] != y || cells[3 * slot + 2] != z)) {
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  private long cell(double coordinate) {
    return (long) Math.floor(coordinate / (CELL * tolerance));
  }
}
