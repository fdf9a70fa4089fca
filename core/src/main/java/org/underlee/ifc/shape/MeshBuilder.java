package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/** Collects plane faces as triangles, vertices with the same coordinates being one. */
final class MeshBuilder {
  /**
   * Maps of maps, and round sections along long curves, can ask for any number; one element of a
   * building never needs this many.
   */
  static final int MAX_TRIANGLES = 2_000_000;

  static final String TOO_MANY = "more than " + MAX_TRIANGLES + " triangles";

  private final PointNumbers numbers = new PointNumbers();
  private int[] corners = new int[3 * 16];
  private int size;

  int vertex(Vec3 p) {
    return numbers.of(p);
  }

  Vec3 point(int vertex) {
    return numbers.points().get(vertex);
  }

  /** A triangle, left out where two of its corners are one. */
  void triangle(int a, int b, int c) {
    if (a == b || b == c || c == a) {
      return;
    }
    if (size == corners.length) {
      if (size > 3 * MAX_TRIANGLES) {
        throw new IllegalStateException(TOO_MANY);
      }
      corners = Arrays.copyOf(corners, 2 * size);
    }
    corners[size++] = a;
    corners[size++] = b;
    corners[size++] = c;
  }

  /** A plane face with holes; its front is where the outer ring runs counter-clockwise. */
  void face(List<Vec3> outer, List<List<Vec3>> holes) {
    List<int[]> triangles;
    try {
      triangles = triangles(outer, holes);
    } catch (IllegalArgumentException crossing) {
      triangles = untangled(outer, holes, crossing);
    }
    triangles.forEach(t -> triangle(t[0], t[1], t[2]));
  }

  /** Where holes cross or touch the outer ring: the regions that the outer ring leaves of them. */
  private List<int[]> untangled(
      List<Vec3> outer, List<List<Vec3>> holes, IllegalArgumentException crossing) {
    List<int[]> triangles = new ArrayList<>();
    for (CapFaces.Face face : CapRegions.ofRings(outer, holes).faces()) {
      triangles.addAll(triangles(face.outer(), face.holes()));
    }
    if (triangles.isEmpty()) {
      throw crossing;
    }
    return triangles;
  }

  /** The triangles of such a face, not yet added. */
  List<int[]> triangles(List<Vec3> outer, List<List<Vec3>> holes) {
    int[] ring = ring(outer);
    if (ring.length < 3) {
      return List.of();
    }
    List<int[]> inner = holes.stream().map(this::ring).filter(h -> h.length >= 3).toList();
    return FlatFace.triangles(numbers.points(), ring, inner);
  }

  private int[] ring(List<Vec3> ring) {
    int[] vertices = ring.stream().mapToInt(this::vertex).toArray();
    int n = 0;
    for (int v : vertices) {
      if (n == 0 || vertices[n - 1] != v) {
        vertices[n++] = v;
      }
    }
    while (n > 1 && vertices[n - 1] == vertices[0]) {
      n--;
    }
    return Arrays.copyOf(vertices, n);
  }

  /** The mesh with every face turned over. */
  static Mesh turned(Mesh mesh) {
    MeshBuilder builder = new MeshBuilder();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      builder.triangle(
          builder.vertex(mesh.point(t, 0)),
          builder.vertex(mesh.point(t, 2)),
          builder.vertex(mesh.point(t, 1)));
    }
    return builder.mesh();
  }

  /** The mesh with vertices of the same coordinates made one. */
  static Mesh welded(Mesh mesh) {
    return turned(turned(mesh));
  }

  Mesh mesh() {
    List<Vec3> points = numbers.points();
    double[] xyz = new double[3 * points.size()];
    for (int i = 0; i < points.size(); i++) {
      Vec3 p = points.get(i);
      xyz[3 * i] = p.x();
      xyz[3 * i + 1] = p.y();
      xyz[3 * i + 2] = p.z();
    }
    return new Mesh(xyz, Arrays.copyOf(corners, size));
  }
}
