package org.underlee.ifc.shape;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import org.underlee.geom.Mesh;

/**
 * Turns the faces of a surface so that neighbours agree and a closed one faces outward. A surface
 * whose faces already agree is turned over as a whole or not at all, so that shells of hollows keep
 * facing inward. Edges that more than two faces share say nothing about sides and are passed over.
 */
final class Orientation {
  private static final int NONE = -1;
  private static final int MANY = -2;
  private static final int[] LONELY = {NONE, NONE};

  private final Mesh mesh;
  private final int[] corners;

  /** The triangle that runs along a directed edge; {@link #MANY} where several do. */
  private final Map<Long, Integer> runs = new HashMap<>();

  private Orientation(Mesh mesh) {
    this.mesh = mesh;
    this.corners = new int[3 * mesh.triangleCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        corners[3 * t + k] = mesh.corner(t, k);
      }
    }
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int triangle = t;
        runs.merge(edge(t, k), triangle, (one, other) -> MANY);
      }
    }
  }

  private static long key(int from, int to) {
    return (long) from << 32 | to;
  }

  private long edge(int triangle, int k) {
    return key(mesh.corner(triangle, k), mesh.corner(triangle, (k + 1) % 3));
  }

  private static long undirected(int from, int to) {
    return key(Math.min(from, to), Math.max(from, to));
  }

  /**
   * The mesh with its faces turned.
   *
   * @param declaredClosed whether the file calls the surface closed; if not, it is taken for closed
   *     when every edge has a face on both sides
   */
  static Mesh outward(Mesh mesh, boolean declaredClosed) {
    if (mesh.isEmpty()) {
      return mesh;
    }
    Orientation work = new Orientation(mesh);
    if (declaredClosed && !work.isClosed()) {
      work = new Orientation(NearPoints.merged(mesh));
    }
    if (work.agrees()) {
      boolean closed = declaredClosed || work.isClosed();
      return closed && work.mesh.volume() < 0 ? work.turned() : work.mesh;
    }
    return work.flooded(declaredClosed);
  }

  private boolean agrees() {
    return runs.values().stream().noneMatch(t -> t == MANY);
  }

  private boolean isClosed() {
    return runs.keySet().stream()
        .allMatch(edge -> runs.containsKey(key(edge.intValue(), (int) (edge >>> 32))));
  }

  private Mesh turned() {
    for (int t = 0; t < mesh.triangleCount(); t++) {
      turn(t);
    }
    return rebuilt();
  }

  private void turn(int t) {
    int first = corners[3 * t];
    corners[3 * t] = corners[3 * t + 1];
    corners[3 * t + 1] = first;
  }

  private Mesh rebuilt() {
    double[] xyz = new double[3 * mesh.vertexCount()];
    for (int i = 0; i < mesh.vertexCount(); i++) {
      xyz[3 * i] = mesh.vertex(i).x();
      xyz[3 * i + 1] = mesh.vertex(i).y();
      xyz[3 * i + 2] = mesh.vertex(i).z();
    }
    return new Mesh(xyz, corners);
  }

  /** Spreads the sense of one triangle over each connected piece, then turns the piece outward. */
  private Mesh flooded(boolean declaredClosed) {
    Map<Long, int[]> sides = sides();
    int[] piece = new int[mesh.triangleCount()];
    Arrays.fill(piece, NONE);
    int pieces = 0;
    for (int t = 0; t < piece.length; t++) {
      if (piece[t] == NONE) {
        flood(t, pieces++, piece, sides);
      }
    }
    if (declaredClosed || sides.values().stream().allMatch(s -> s[1] != NONE)) {
      turnInsideOutPieces(piece, pieces);
    }
    return rebuilt();
  }

  /** The two triangles at each undirected edge; {@link #NONE} for a missing, {@link #MANY}. */
  private Map<Long, int[]> sides() {
    Map<Long, int[]> sides = new HashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int[] pair =
            sides.computeIfAbsent(
                undirected(mesh.corner(t, k), mesh.corner(t, (k + 1) % 3)),
                e -> new int[] {NONE, NONE});
        int free = pair[0] == NONE ? 0 : 1;
        pair[free] = pair[free] == NONE ? t : MANY;
      }
    }
    return sides;
  }

  private void flood(int start, int number, int[] piece, Map<Long, int[]> sides) {
    Deque<Integer> next = new ArrayDeque<>();
    piece[start] = number;
    next.add(start);
    while (!next.isEmpty()) {
      int t = next.remove();
      for (int k = 0; k < 3; k++) {
        int from = corners[3 * t + k];
        int to = corners[3 * t + (k + 1) % 3];
        int other = across(t, sides.getOrDefault(undirected(from, to), LONELY));
        if (other >= 0 && piece[other] == NONE) {
          if (hasRun(other, from, to)) {
            turn(other);
          }
          piece[other] = number;
          next.add(other);
        }
      }
    }
  }

  private static int across(int t, int[] pair) {
    if (pair[1] < 0) {
      return NONE;
    }
    return pair[0] == t ? pair[1] : pair[0];
  }

  /** Whether the triangle, as turned so far, runs from one vertex straight to the other. */
  private boolean hasRun(int triangle, int from, int to) {
    for (int k = 0; k < 3; k++) {
      if (corners[3 * triangle + k] == from && corners[3 * triangle + (k + 1) % 3] == to) {
        return true;
      }
    }
    return false;
  }

  private void turnInsideOutPieces(int[] piece, int pieces) {
    double[] volume = new double[pieces];
    var o = mesh.vertex(corners[0]);
    for (int t = 0; t < piece.length; t++) {
      var a = mesh.vertex(corners[3 * t]).minus(o);
      var b = mesh.vertex(corners[3 * t + 1]).minus(o);
      var c = mesh.vertex(corners[3 * t + 2]).minus(o);
      volume[piece[t]] += a.dot(b.cross(c));
    }
    for (int t = 0; t < piece.length; t++) {
      if (volume[piece[t]] < 0) {
        turn(t);
      }
    }
  }
}
