package org.underlee.geom;

import java.util.Arrays;
import java.util.Collection;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A triangle mesh: vertices in metres, faces counter-clockwise seen from outside. A closed mesh has
 * a volume; nothing here demands that a mesh is closed.
 */
public final class Mesh {
  public static final Mesh EMPTY = new Mesh(new double[0], new int[0]);

  private final double[] xyz;
  private final int[] corners;

  /** Worked out when first asked for, the same whoever does it. */
  private volatile @Nullable Box bounds;

  private volatile @Nullable Bar bar;

  private record Bar(Optional<OrientedBox> box) {}

  /**
   * @param xyz three numbers a vertex
   * @param corners three vertex numbers a triangle
   * @throws IllegalArgumentException when a corner names no vertex or a coordinate is not finite
   */
  public Mesh(double[] xyz, int[] corners) {
    this(finite(xyz.clone()), corners.clone(), true);
    for (int corner : corners) {
      if (corner < 0 || corner >= xyz.length / 3) {
        throw new IllegalArgumentException(
            "a mesh face names vertex " + corner + " of " + xyz.length / 3);
      }
    }
  }

  /** Of arrays that are ours alone and have been looked through. */
  @SuppressWarnings("unused") // tells it from the other
  private Mesh(double[] xyz, int[] corners, boolean ours) {
    this.xyz = xyz;
    this.corners = corners;
  }

  private static double[] finite(double[] xyz) {
    for (double c : xyz) {
      if (!Double.isFinite(c)) {
        throw new IllegalArgumentException("a mesh coordinate is " + c);
      }
    }
    return xyz;
  }

  /**
   * As {@link #Mesh(double[], int[])}, of arrays that nobody else keeps and whose corners are known
   * to name vertices: nothing is copied.
   */
  static Mesh handedOver(double[] xyz, int[] corners) {
    return new Mesh(finite(xyz), corners, true);
  }

  /** All the meshes as one. */
  public static Mesh union(Collection<Mesh> parts) {
    if (parts.size() == 1) {
      return parts.iterator().next();
    }
    int vertices = 0;
    int faces = 0;
    for (Mesh part : parts) {
      vertices += part.xyz.length;
      faces += part.corners.length;
    }
    double[] xyz = new double[vertices];
    int[] corners = new int[faces];
    int v = 0;
    int f = 0;
    for (Mesh part : parts) {
      System.arraycopy(part.xyz, 0, xyz, v, part.xyz.length);
      for (int corner : part.corners) {
        corners[f++] = corner + v / 3;
      }
      v += part.xyz.length;
    }
    return new Mesh(xyz, corners, true);
  }

  public int vertexCount() {
    return xyz.length / 3;
  }

  public int triangleCount() {
    return corners.length / 3;
  }

  /** Memory that its numbers take. */
  public long bytes() {
    return (long) Double.BYTES * xyz.length + (long) Integer.BYTES * corners.length;
  }

  public boolean isEmpty() {
    return corners.length == 0;
  }

  public Vec3 vertex(int i) {
    return new Vec3(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
  }

  /** One coordinate of a vertex, 0 for x, 1 for y, 2 for z: for loops over many vertices. */
  double coordinate(int vertex, int axis) {
    return xyz[3 * vertex + axis];
  }

  /** The vertex number of corner {@code 0…2} of a triangle. */
  public int corner(int triangle, int corner) {
    return corners[3 * triangle + corner];
  }

  /** The place of corner {@code 0…2} of a triangle. */
  public Vec3 point(int triangle, int corner) {
    return vertex(corner(triangle, corner));
  }

  /** Square to the triangle, twice its area long. */
  public Vec3 areaNormal(int triangle) {
    int from = 3 * corners[3 * triangle];
    int b = 3 * corners[3 * triangle + 1];
    int c = 3 * corners[3 * triangle + 2];
    double ux = xyz[b] - xyz[from];
    double uy = xyz[b + 1] - xyz[from + 1];
    double uz = xyz[b + 2] - xyz[from + 2];
    double vx = xyz[c] - xyz[from];
    double vy = xyz[c + 1] - xyz[from + 1];
    double vz = xyz[c + 2] - xyz[from + 2];
    return new Vec3(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
  }

  /** Where its vertices lie in a rigid frame, three numbers each. */
  double[] toLocal(Transform rigid) {
    return rigid.toLocalAll(xyz);
  }

  public Box bounds() {
    Box known = bounds;
    if (known == null) {
      known = Box.around(xyz);
      bounds = known;
    }
    return known;
  }

  /** As {@link BarMeasure} finds it. */
  Optional<OrientedBox> bar() {
    Bar known = bar;
    if (known == null) {
      known = new Bar(BarMeasure.measured(this));
      bar = known;
    }
    return known.box;
  }

  /**
   * Signed volume by the divergence theorem, taken about the first vertex to stay exact far out.
   */
  public double volume() {
    if (isEmpty()) {
      return 0;
    }
    double six = 0;
    for (int t = 0; t < corners.length; t += 3) {
      int a = 3 * corners[t];
      int b = 3 * corners[t + 1];
      int c = 3 * corners[t + 2];
      double ux = xyz[b] - xyz[0];
      double uy = xyz[b + 1] - xyz[1];
      double uz = xyz[b + 2] - xyz[2];
      double vx = xyz[c] - xyz[0];
      double vy = xyz[c + 1] - xyz[1];
      double vz = xyz[c + 2] - xyz[2];
      six +=
          (xyz[a] - xyz[0]) * (uy * vz - uz * vy)
              + (xyz[a + 1] - xyz[1]) * (uz * vx - ux * vz)
              + (xyz[a + 2] - xyz[2]) * (ux * vy - uy * vx);
    }
    return six / 6;
  }

  /** The mesh moved by an affine map; faces are turned over when the map mirrors. */
  public Mesh transformed(Transform map) {
    return new Mesh(finite(map.applyAll(xyz)), map.determinant() < 0 ? turned() : corners, true);
  }

  private int[] turned() {
    int[] turned = corners.clone();
    for (int t = 0; t < turned.length; t += 3) {
      turned[t] = corners[t + 1];
      turned[t + 1] = corners[t];
    }
    return turned;
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof Mesh m && Arrays.equals(xyz, m.xyz) && Arrays.equals(corners, m.corners);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(xyz) + Arrays.hashCode(corners);
  }

  @Override
  public String toString() {
    return "Mesh[" + vertexCount() + " vertices, " + triangleCount() + " triangles]";
  }
}
