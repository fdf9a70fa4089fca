package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
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

  private final List<Edge> edges;
  private final boolean closed;

  /**
   * @param from a vertex number of the mesh (likewise to)
   * @param faceA a triangle beside it
   * @param faceB the other, or {@link #NO_FACE}
   * @param crease whether it is drawn from any side, not only as an outline
   */
  record Edge(int from, int to, int faceA, int faceB, boolean crease) {}

  private FeatureEdges(List<Edge> edges, boolean closed) {
    this.edges = edges;
    this.closed = closed;
  }

  List<Edge> edges() {
    return edges;
  }

  /** Whether every side of every triangle is met by one other, running the other way. */
  boolean closed() {
    return closed;
  }

  static FeatureEdges of(Mesh mesh) {
    Sides sides = Sides.of(mesh, Tolerance.forCoordinates(magnitude(mesh)).same());
    List<Edge> edges = new ArrayList<>();
    boolean closed = true;
    for (int s = 0; s < sides.count(); s++) {
      boolean pair = sides.uses(s) == 2;
      closed &= pair && sides.isOpposite(s);
      double cosine = sides.uses(s) == 1 ? -1 : sides.cosine(s, mesh);
      if (sides.uses(s) > 2 || cosine < PLANE_COSINE) {
        edges.add(sides.edge(s, !pair || cosine < CREASE_COSINE));
      }
    }
    return new FeatureEdges(edges, closed);
  }

  private static double magnitude(Mesh mesh) {
    if (mesh.vertexCount() == 0) {
      return 0;
    }
    return Math.max(mesh.bounds().min().length(), mesh.bounds().max().length());
  }
}
