package org.underlee.picture;

import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Tolerance;

/**
 * The lines that a draughtsman would draw of a mesh: its borders and its creases. The cuts of a
 * plane face into triangles are none. Where a smooth surface is faceted (a pipe), the joint of two
 * facets is kept as a possible outline, to be drawn where one of them faces away.
 *
 * <p>Limit: where a mesh's faces meet without sharing corners (a T-junction), each side counts as a
 * border.
 */
final class FeatureEdges {
  /** A crease is a turn of more than 20°. */
  private static final double CREASE_COSINE = StrictMath.cos(Math.toRadians(20));

  /** Facets within 1° are one plane. */
  private static final double PLANE_COSINE = StrictMath.cos(Math.toRadians(1));

  /** Stands for the second face of a border. */
  static final int NO_FACE = -1;

  /** Two vertex numbers an edge. */
  private final int[] ends;

  /** Two triangles an edge. */
  private final int[] faces;

  private final boolean[] crease;
  private final boolean closed;

  /**
   * @param from a vertex number of the mesh (likewise to)
   * @param faceA a triangle beside it
   * @param faceB the other, or {@link #NO_FACE}
   * @param crease whether it is drawn from any side, not only as an outline
   */
  record Edge(int from, int to, int faceA, int faceB, boolean crease) {}

  private FeatureEdges(int count, boolean closed) {
    ends = new int[2 * count];
    faces = new int[2 * count];
    crease = new boolean[count];
    this.closed = closed;
  }

  int count() {
    return crease.length;
  }

  Edge edge(int i) {
    return new Edge(ends[2 * i], ends[2 * i + 1], faces[2 * i], faces[2 * i + 1], crease[i]);
  }

  private void put(int i, Edge edge) {
    ends[2 * i] = edge.from;
    ends[2 * i + 1] = edge.to;
    faces[2 * i] = edge.faceA;
    faces[2 * i + 1] = edge.faceB;
    crease[i] = edge.crease;
  }

  /** Whether every side of every triangle is met by one other, running the other way. */
  boolean closed() {
    return closed;
  }

  static FeatureEdges of(Mesh mesh) {
    return of(mesh, new Sides());
  }

  /**
   * As {@link #of(Mesh)}.
   *
   * @param sides tables that meshes before have used
   */
  static FeatureEdges of(Mesh mesh, Sides sides) {
    sides.find(mesh, Tolerance.forCoordinates(magnitude(mesh)).same());
    int count = 0;
    boolean closed = true;
    for (int s = 0; s < sides.count(); s++) {
      count += isDrawn(sides, s) ? 1 : 0;
      closed &= sides.uses(s) == 2 && sides.isOpposite(s);
    }
    FeatureEdges found = new FeatureEdges(count, closed);
    int at = 0;
    for (int s = 0; s < sides.count(); s++) {
      if (isDrawn(sides, s)) {
        found.put(at++, sides.edge(s, sides.uses(s) != 2 || sides.cosine(s) < CREASE_COSINE));
      }
    }
    return found;
  }

  private static boolean isDrawn(Sides sides, int s) {
    return sides.uses(s) != 2 || sides.cosine(s) < PLANE_COSINE;
  }

  private static double magnitude(Mesh mesh) {
    if (mesh.vertexCount() == 0) {
      return 0;
    }
    Box bounds = mesh.bounds();
    return Math.max(bounds.min().length(), bounds.max().length());
  }
}
