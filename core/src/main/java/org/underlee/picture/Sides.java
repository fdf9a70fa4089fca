package org.underlee.picture;

import java.util.Arrays;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * The lines from place to place of a mesh, in the order in which its triangles name them, and the
 * triangles beside each. Kept in arrays with a table of their numbers, as every mesh of every
 * picture of a drag goes through.
 */
final class Sides {
  private static final int NONE = -1;

  private final int mask;
  private final int[] table;
  private final int[] from;
  private final int[] to;
  private final int[] faceA;
  private final int[] faceB;
  private final int[] uses;
  private final boolean[] opposite;
  private int count;

  private Sides(int most) {
    int size = Math.max(2, Integer.highestOneBit(most) * 4);
    mask = size - 1;
    table = new int[size];
    Arrays.fill(table, NONE);
    from = new int[most];
    to = new int[most];
    faceA = new int[most];
    faceB = new int[most];
    uses = new int[most];
    opposite = new boolean[most];
  }

  /**
   * @param tolerance vertices nearer to each other than this are one place
   */
  static Sides of(Mesh mesh, double tolerance) {
    int[] place = Weld.firstAtPlace(mesh, tolerance);
    Sides sides = new Sides(3 * mesh.triangleCount());
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int a = place[mesh.corner(t, k)];
        int b = place[mesh.corner(t, (k + 1) % 3)];
        if (a != b) {
          sides.add(a, b, t);
        }
      }
    }
    return sides;
  }

  private void add(int a, int b, int face) {
    long mixed = (Math.min(a, b) * 31L + Math.max(a, b)) * 0x9E3779B97F4A7C15L;
    int slot = (int) (mixed >>> 32) & mask;
    while (table[slot] != NONE && !joins(table[slot], a, b)) {
      slot = (slot + 1) & mask;
    }
    if (table[slot] == NONE) {
      from[count] = a;
      to[count] = b;
      faceA[count] = FeatureEdges.NO_FACE;
      faceB[count] = FeatureEdges.NO_FACE;
      table[slot] = count++;
    }
    use(table[slot], a, face);
  }

  private boolean joins(int side, int a, int b) {
    return (from[side] == a && to[side] == b) || (from[side] == b && to[side] == a);
  }

  private void use(int side, int startsAt, int face) {
    if (uses[side] == 0) {
      faceA[side] = face;
    } else if (uses[side] == 1) {
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
  double cosine(int side, Mesh mesh) {
    Vec3 a = mesh.areaNormal(faceA[side]);
    Vec3 b = mesh.areaNormal(faceB[side]);
    double lengths = a.length() * b.length();
    if (!(lengths > 0)) {
      return 1;
    }
    return a.dot(opposite[side] ? b : b.negated()) / lengths;
  }
}
