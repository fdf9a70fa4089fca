package org.underlee.picture;

import java.util.Arrays;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * The lines from place to place of a mesh, in the order in which its triangles name them, and the
 * triangles beside each. Kept in arrays that serve one mesh after the other, with a table of their
 * numbers, as every mesh of every picture of a drag goes through. For one thread at a time.
 */
final class Sides {
  private static final int NONE = -1;

  /** Numbers of a face: those of its area normal, then its length. */
  private static final int NORMAL = 4;

  private final Weld weld = new Weld();
  private int mask;
  private int[] table = {};
  private int[] from = {};
  private int[] to = {};
  private int[] faceA = {};
  private int[] faceB = {};
  private int[] uses = {};
  private boolean[] opposite = {};
  private double[] normals = {};
  private int count;

  /**
   * Finds those of a mesh, and forgets those of the one before.
   *
   * @param tolerance vertices nearer to each other than this are one place
   */
  void find(Mesh mesh, double tolerance) {
    start(3 * mesh.triangleCount());
    int[] place = weld.firstAtPlace(mesh, tolerance);
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int a = place[mesh.corner(t, 0)];
      int b = place[mesh.corner(t, 1)];
      int c = place[mesh.corner(t, 2)];
      add(a, b, t);
      add(b, c, t);
      add(c, a, t);
      measure(mesh.areaNormal(t), NORMAL * t);
    }
  }

  /** Room for so many sides. */
  private void start(int most) {
    int size = Math.max(2, Integer.highestOneBit(most) * 4);
    mask = size - 1;
    count = 0;
    if (table.length < size) {
      table = new int[size];
    }
    if (from.length < most) {
      from = new int[most];
      to = new int[most];
      faceA = new int[most];
      faceB = new int[most];
      uses = new int[most];
      opposite = new boolean[most];
      normals = new double[NORMAL * most / 3];
    }
    Arrays.fill(table, 0, size, NONE);
  }

  private void measure(Vec3 normal, int at) {
    normals[at] = normal.x();
    normals[at + 1] = normal.y();
    normals[at + 2] = normal.z();
    normals[at + 3] = normal.length();
  }

  private void add(int a, int b, int face) {
    if (a == b) {
      return;
    }
    long mixed = (Math.min(a, b) * 31L + Math.max(a, b)) * 0x9E3779B97F4A7C15L;
    int slot = (int) (mixed >>> 32) & mask;
    while (table[slot] != NONE && !joins(table[slot], a, b)) {
      slot = (slot + 1) & mask;
    }
    if (table[slot] == NONE) {
      from[count] = a;
      to[count] = b;
      faceA[count] = face;
      faceB[count] = FeatureEdges.NO_FACE;
      uses[count] = 1;
      opposite[count] = false;
      table[slot] = count++;
    } else {
      useAgain(table[slot], a, face);
    }
  }

  private boolean joins(int side, int a, int b) {
    return (from[side] == a && to[side] == b) || (from[side] == b && to[side] == a);
  }

  private void useAgain(int side, int startsAt, int face) {
    if (uses[side] == 1) {
      faceB[side] = face;
      opposite[side] = startsAt != from[side];
    }
    uses[side]++;
  }

  int count() {
    return count;
  }

  /** How many triangles are beside a line. */
  int uses(int side) {
    return uses[side];
  }

  /** Whether the second triangle runs along it the other way. */
  boolean isOpposite(int side) {
    return opposite[side];
  }

  FeatureEdges.Edge edge(int side, boolean crease) {
    return new FeatureEdges.Edge(from[side], to[side], faceA[side], faceB[side], crease);
  }

  /** Cosine of the turn from one face to the other; a face without area turns nothing. */
  double cosine(int side) {
    int a = NORMAL * faceA[side];
    int b = NORMAL * faceB[side];
    double lengths = normals[a + 3] * normals[b + 3];
    if (!(lengths > 0)) {
      return 1;
    }
    double dot =
        normals[a] * normals[b] + normals[a + 1] * normals[b + 1] + normals[a + 2] * normals[b + 2];
    return (opposite[side] ? dot : -dot) / lengths;
  }
}
