package org.underlee.picture;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Vec3;

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
    Map<Long, Side> sides = sides(mesh);
    List<Edge> edges = new ArrayList<>();
    boolean closed = true;
    for (Side side : sides.values()) {
      closed &= side.uses == 2 && side.opposite;
      double cosine = side.uses == 1 ? -1 : side.cosine(mesh);
      if (side.uses > 2 || cosine < PLANE_COSINE) {
        boolean crease = side.uses != 2 || cosine < CREASE_COSINE;
        edges.add(new Edge(side.from, side.to, side.faceA, side.faceB, crease));
      }
    }
    return new FeatureEdges(edges, closed);
  }

  private static Map<Long, Side> sides(Mesh mesh) {
    int[] place = Weld.firstAtPlace(mesh, Tolerance.forCoordinates(magnitude(mesh)).same());
    Map<Long, Side> sides = new LinkedHashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int a = place[mesh.corner(t, k)];
        int b = place[mesh.corner(t, (k + 1) % 3)];
        if (a != b) {
          long key = ((long) Math.min(a, b) << 32) | Math.max(a, b);
          sides.computeIfAbsent(key, unused -> new Side(a, b)).add(t, a);
        }
      }
    }
    return sides;
  }

  private static double magnitude(Mesh mesh) {
    if (mesh.vertexCount() == 0) {
      return 0;
    }
    return Math.max(mesh.bounds().min().length(), mesh.bounds().max().length());
  }

  /** One place-to-place line and the triangles beside it. */
  private static final class Side {
    private final int from;
    private final int to;
    private int faceA = NO_FACE;
    private int faceB = NO_FACE;
    private int uses;
    private boolean opposite;

    Side(int from, int to) {
      this.from = from;
      this.to = to;
    }

    void add(int face, int startsAt) {
      if (uses == 0) {
        faceA = face;
      } else if (uses == 1) {
        faceB = face;
        opposite = startsAt != from;
      }
      uses++;
    }

    /** Cosine of the turn from one face to the other; a face without area turns nothing. */
    double cosine(Mesh mesh) {
      Vec3 a = mesh.areaNormal(faceA);
      Vec3 b = mesh.areaNormal(faceB);
      double lengths = a.length() * b.length();
      if (!(lengths > 0)) {
        return 1;
      }
      return a.dot(opposite ? b : b.negated()) / lengths;
    }
  }
}
