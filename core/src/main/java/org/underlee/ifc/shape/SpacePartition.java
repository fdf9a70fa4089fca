package org.underlee.ifc.shape;

import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.ConvexVolume;
import org.apache.commons.geometry.euclidean.threed.PlaneConvexSubset;
import org.apache.commons.geometry.euclidean.threed.Planes;
import org.apache.commons.geometry.euclidean.threed.RegionBSPTree3D;
import org.apache.commons.geometry.euclidean.threed.Triangle3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.mesh.SimpleTriangleMesh;
import org.apache.commons.numbers.core.Precision;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.ifc.shape.PlaneCut.Plane;

/**
 * Union, intersection and difference of closed meshes of any form, by binary space partition
 * (Apache Commons Geometry). For small solids: the trees of large curved ones grow too big and are
 * refused. Every result is checked: what was taken away and what is left must add up, and the mesh
 * must hold the volume of its tree.
 */
final class SpacePartition {
  /** Faces of both solids together; a thousand take about a second. */
  private static final int MAX_TRIANGLES = 4_000;

  /** How far volumes that should be one may differ. */
  private static final double VOLUME_AGREES = 1e-4;

  /** Faces this many steps of the grid apart are taken for one: fine first, then coarser. */
  private static final double[] STEPS = {1, 16, 1 / 16.0};

  /** About the middle of both solids: far from the origin the last digits would be lost. */
  private final Vec3 middle;

  private final Precision.DoubleEquivalence precision;

  private SpacePartition(Vec3 middle, double step) {
    this.middle = middle;
    this.precision = Precision.doubleEquivalenceOfEpsilon(step);
  }

  private interface Work {
    Mesh with(SpacePartition partition);
  }

  static Mesh union(Mesh a, Mesh b, double grid) {
    requireSmall(a.triangleCount() + b.triangleCount());
    return tried(Box.around(List.of(a.bounds(), b.bounds())).centre(), grid, p -> p.union(a, b));
  }

  static Mesh intersection(Mesh a, Mesh b, double grid) {
    if (!a.bounds().meets(b.bounds())) {
      return Mesh.EMPTY;
    }
    requireSmall(a.triangleCount() + b.triangleCount());
    return tried(a.bounds().centre(), grid, p -> p.parts(a, List.of(new Cutter.Solid(b)))[1]);
  }

  /** The solid less all that the cutters take away. */
  static Mesh difference(Mesh solid, List<Cutter> cutters, double grid) {
    List<Cutter> near = cutters.stream().filter(c -> !isApart(solid, c)).toList();
    if (near.isEmpty()) {
      return solid;
    }
    requireSmall(solid.triangleCount() + near.stream().mapToInt(SpacePartition::triangles).sum());
    return tried(solid.bounds().centre(), grid, p -> p.parts(solid, near)[0]);
  }

  private static boolean isApart(Mesh solid, Cutter cutter) {
    return cutter instanceof Cutter.Solid s && !solid.bounds().meets(s.mesh().bounds());
  }

  private static int triangles(Cutter cutter) {
    return cutter instanceof Cutter.Solid s ? s.mesh().triangleCount() : 0;
  }

  private static void requireSmall(int triangles) {
    if (triangles > MAX_TRIANGLES) {
      throw new IllegalStateException(
          "solids of " + triangles + " triangles; at most " + MAX_TRIANGLES + " can be combined");
    }
  }

  private static Mesh tried(Vec3 middle, double grid, Work work) {
    RuntimeException last = new IllegalStateException("nothing tried");
    for (double steps : STEPS) {
      try {
        return work.with(new SpacePartition(middle, steps * grid));
      } catch (IllegalStateException | IllegalArgumentException unsound) {
        last = unsound;
      } catch (NullPointerException inLibrary) {
        // The library drops a face that vanishes between two planes and then asks for it.
        last = new IllegalStateException("faces too thin to be told apart", inLibrary);
      }
    }
    throw last;
  }

  private Mesh union(Mesh a, Mesh b) {
    RegionBSPTree3D first = tree(a);
    RegionBSPTree3D second = tree(b);
    RegionBSPTree3D both = RegionBSPTree3D.empty();
    both.intersection(first, second);
    RegionBSPTree3D all = RegionBSPTree3D.empty();
    all.union(first, second);
    requireSame(a.volume() + b.volume(), all.getSize() + both.getSize());
    return mesh(all);
  }

  /** What is left of the solid, and what is taken away. */
  private Mesh[] parts(Mesh solid, List<Cutter> cutters) {
    RegionBSPTree3D left = tree(solid);
    RegionBSPTree3D taken = tree(solid);
    RegionBSPTree3D tool = RegionBSPTree3D.empty();
    for (Cutter cutter : cutters) {
      add(cutter, solid, taken, tool);
    }
    left.difference(tool);
    taken.intersection(tool);
    requireSame(solid.volume(), left.getSize() + taken.getSize());
    return new Mesh[] {mesh(left), mesh(taken)};
  }

  private void add(Cutter cutter, Mesh solid, RegionBSPTree3D whole, RegionBSPTree3D tool) {
    if (cutter instanceof Cutter.Solid s) {
      tool.union(tree(s.mesh()));
    } else {
      for (List<Plane> region : ((Cutter.Regions) cutter).convex()) {
        Optional<RegionBSPTree3D> volume = volume(region).map(ConvexVolume::toTree);
        if (volume.isPresent()) {
          requireBounded(solid, region, whole, volume.get());
          tool.union(volume.get());
        }
      }
    }
  }

  /** Where the library takes two planes of a thin region for one, the region has no end. */
  private void requireBounded(
      Mesh solid, List<Plane> region, RegionBSPTree3D whole, RegionBSPTree3D volume) {
    RegionBSPTree3D common = RegionBSPTree3D.empty();
    common.intersection(whole, volume);
    double found = PlaneCut.below(solid, region, PlaneCut.grid(solid), new CutWork()).volume();
    if (!(Math.abs(found - common.getSize()) <= VOLUME_AGREES * Math.abs(solid.volume()))) {
      throw new IllegalStateException("a region to be taken away is too thin");
    }
  }

  /** None where opposite planes leave no thickness between them. */
  private Optional<ConvexVolume> volume(List<Plane> region) {
    try {
      return Optional.of(ConvexVolume.fromBounds(region.stream().map(this::plane).toList()));
    } catch (IllegalArgumentException flat) {
      return Optional.empty();
    }
  }

  private org.apache.commons.geometry.euclidean.threed.Plane plane(Plane plane) {
    return Planes.fromPointAndNormal(
        vector(plane.origin().minus(middle)), vector(plane.normal()), precision);
  }

  private static Vector3D vector(Vec3 p) {
    return Vector3D.of(p.x(), p.y(), p.z());
  }

  private RegionBSPTree3D tree(Mesh mesh) {
    SimpleTriangleMesh.Builder builder = SimpleTriangleMesh.builder(precision);
    for (int i = 0; i < mesh.vertexCount(); i++) {
      builder.addVertex(vector(mesh.vertex(i).minus(middle)));
    }
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (!isSliver(mesh, t)) {
        builder.addFace(mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2));
      }
    }
    RegionBSPTree3D tree = builder.build().toTree();
    requireSame(mesh.volume(), tree.getSize());
    return tree;
  }

  /** Triangles without height have no plane; their neighbours close the surface without them. */
  private boolean isSliver(Mesh mesh, int t) {
    Vec3 a = mesh.point(t, 0);
    Vec3 b = mesh.point(t, 1);
    Vec3 c = mesh.point(t, 2);
    double longest = Math.max(a.distance(b), Math.max(b.distance(c), c.distance(a)));
    return precision.eqZero(mesh.areaNormal(t).length() / longest);
  }

  private Mesh mesh(RegionBSPTree3D tree) {
    MeshBuilder builder = new MeshBuilder();
    for (PlaneConvexSubset face : tree.boundaries()) {
      if (face.getVertices().size() < 3) {
        // A sliver whose corners the library takes for two; the check of the volume stands guard.
        continue;
      }
      for (Triangle3D t : face.toTriangles()) {
        builder.triangle(
            builder.vertex(point(t.getPoint1())),
            builder.vertex(point(t.getPoint2())),
            builder.vertex(point(t.getPoint3())));
      }
    }
    Mesh mesh = builder.mesh();
    requireSame(tree.getSize(), mesh.volume());
    return mesh;
  }

  private Vec3 point(Vector3D p) {
    return new Vec3(p.getX(), p.getY(), p.getZ()).plus(middle);
  }

  private static void requireSame(double volume, double other) {
    if (!(Math.abs(volume - other) <= VOLUME_AGREES * Math.abs(volume))) {
      throw new IllegalStateException(
          "its volumes do not add up (" + volume + ", " + other + "): a solid is not closed");
    }
  }
}
