package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.PlaneConvexSubset;
import org.apache.commons.geometry.euclidean.threed.RegionBSPTree3D;
import org.apache.commons.geometry.euclidean.threed.Triangle3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.mesh.SimpleTriangleMesh;
import org.apache.commons.numbers.core.Precision;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * Union, intersection and difference of closed meshes of any form, by binary space partition
 * (Apache Commons Geometry). For small solids: the trees of large curved ones grow too big and are
 * refused. A result whose volume cannot be right is refused as well.
 */
final class MeshBooleans {
  /** Faces of both solids together; a thousand take about a second. */
  private static final int MAX_TRIANGLES = 4_000;

  /** How far the tree's own volume may differ from its mesh's. */
  private static final double VOLUME_AGREES = 1e-4;

  private MeshBooleans() {}

  private enum Operation {
    UNION,
    INTERSECTION,
    DIFFERENCE
  }

  static Mesh union(Mesh a, Mesh b, double grid) {
    return of(Operation.UNION, a, b, grid);
  }

  static Mesh intersection(Mesh a, Mesh b, double grid) {
    return a.bounds().meets(b.bounds()) ? of(Operation.INTERSECTION, a, b, grid) : Mesh.EMPTY;
  }

  static Mesh difference(Mesh a, Mesh b, double grid) {
    return a.bounds().meets(b.bounds()) ? of(Operation.DIFFERENCE, a, b, grid) : a;
  }

  private static Mesh of(Operation operation, Mesh a, Mesh b, double grid) {
    int triangles = a.triangleCount() + b.triangleCount();
    if (triangles > MAX_TRIANGLES) {
      throw new IllegalStateException(
          "solids of " + triangles + " triangles; at most " + MAX_TRIANGLES + " can be combined");
    }
    // About the middle of both: far from the origin the last digits would be lost.
    Vec3 middle = Box.around(List.of(a.bounds(), b.bounds())).centre();
    Precision.DoubleEquivalence precision = Precision.doubleEquivalenceOfEpsilon(grid);
    RegionBSPTree3D first = tree(a, middle, precision);
    RegionBSPTree3D second = tree(b, middle, precision);
    RegionBSPTree3D result = RegionBSPTree3D.empty();
    switch (operation) {
      case UNION -> result.union(first, second);
      case INTERSECTION -> result.intersection(first, second);
      case DIFFERENCE -> result.difference(first, second);
    }
    Mesh mesh = mesh(result, middle);
    requireSound(operation, a.volume(), b.volume(), mesh.volume());
    return mesh;
  }

  private static RegionBSPTree3D tree(
      Mesh mesh, Vec3 middle, Precision.DoubleEquivalence precision) {
    SimpleTriangleMesh.Builder builder = SimpleTriangleMesh.builder(precision);
    for (int i = 0; i < mesh.vertexCount(); i++) {
      Vec3 p = mesh.vertex(i).minus(middle);
      builder.addVertex(Vector3D.of(p.x(), p.y(), p.z()));
    }
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (!isSliver(mesh, t, precision)) {
        builder.addFace(mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2));
      }
    }
    RegionBSPTree3D tree = builder.build().toTree();
    double volume = mesh.volume();
    if (!(Math.abs(tree.getSize() - volume) <= VOLUME_AGREES * Math.abs(volume))) {
      throw new IllegalStateException("one of the solids is not closed or crosses itself");
    }
    return tree;
  }

  /** Triangles without height have no plane; their neighbours close the surface without them. */
  private static boolean isSliver(Mesh mesh, int t, Precision.DoubleEquivalence precision) {
    Vec3 a = mesh.point(t, 0);
    Vec3 b = mesh.point(t, 1);
    Vec3 c = mesh.point(t, 2);
    double longest = Math.max(a.distance(b), Math.max(b.distance(c), c.distance(a)));
    return precision.eqZero(mesh.areaNormal(t).length() / longest);
  }

  private static Mesh mesh(RegionBSPTree3D tree, Vec3 middle) {
    List<Triangle3D> triangles = new ArrayList<>();
    for (PlaneConvexSubset face : tree.boundaries()) {
      triangles.addAll(face.toTriangles());
    }
    MeshBuilder builder = new MeshBuilder();
    for (Triangle3D t : triangles) {
      builder.triangle(
          builder.vertex(vertex(t.getPoint1(), middle)),
          builder.vertex(vertex(t.getPoint2(), middle)),
          builder.vertex(vertex(t.getPoint3(), middle)));
    }
    return builder.mesh();
  }

  private static Vec3 vertex(Vector3D p, Vec3 middle) {
    return new Vec3(p.getX(), p.getY(), p.getZ()).plus(middle);
  }

  /** The bounds that hold for any two solids. */
  private static void requireSound(Operation operation, double a, double b, double result) {
    double least =
        switch (operation) {
          case UNION -> Math.max(a, b);
          case INTERSECTION -> 0;
          case DIFFERENCE -> Math.max(0, a - b);
        };
    double most =
        switch (operation) {
          case UNION -> a + b;
          case INTERSECTION -> Math.min(a, b);
          case DIFFERENCE -> a;
        };
    double noise = VOLUME_AGREES * (a + b);
    if (!(result >= least - noise && result <= most + noise)) {
      throw new IllegalStateException(
          "combined volumes " + a + " and " + b + " came out as " + result);
    }
  }
}
