package org.underlee.ifc.shape;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.ifc.shape.PlaneCut.Plane;
import org.underlee.step.StepInstance;

/**
 * Differences of a solid and what can be cut out by planes: half spaces, plain or bounded by a
 * polygon, and straight extrusions. What is taken away is split into convex regions; the rest of
 * the solid comes out as closed pieces that touch but do not overlap, so its volume is exact.
 * Unions and intersections are not read.
 */
final class Booleans {
  private final ShapeReader shapes;
  private final Sweeps sweeps;
  private final Curves curves;

  Booleans(ShapeReader shapes, Sweeps sweeps, Curves curves) {
    this.shapes = shapes;
    this.sweeps = sweeps;
    this.curves = curves;
  }

  Map<String, ItemReader> readers() {
    return Map.of(
        "IFCBOOLEANCLIPPINGRESULT", this::difference,
        "IFCBOOLEANRESULT", this::difference,
        "IFCCSGSOLID", solid -> shapes.read(solid.follow(0)));
  }

  /** Walks down the first operands to the solid, then takes away the second ones in turn. */
  private Mesh difference(StepInstance result) {
    Deque<StepInstance> takenAway = new ArrayDeque<>();
    Set<Long> seen = new HashSet<>();
    StepInstance solid = result;
    while (solid.keyword().startsWith("IFCBOOLEAN")) {
      if (!seen.add(solid.id())) {
        throw Unreadable.degenerate(solid, "the result is its own operand");
      }
      if (!solid.enumeration(0).equals("DIFFERENCE")) {
        throw Unreadable.unsupported(solid, " for the operation " + solid.enumeration(0));
      }
      takenAway.push(solid.follow(2));
      solid = solid.follow(1);
    }
    Mesh placed = MeshBuilder.welded(shapes.read(solid));
    // Cut about a corner of the solid: far from the origin the grid of the cuts would be coarse.
    Vec3 corner = placed.isEmpty() ? Vec3.ZERO : placed.vertex(0);
    Mesh whole = placed.transformed(Transform.translation(corner.negated()));
    double grid = Math.max(PlaneCut.grid(whole), PlaneCut.noise(placed));
    List<Mesh> pieces = List.of(whole);
    for (StepInstance tool : takenAway) {
      for (List<Plane> region : regions(tool)) {
        List<Plane> near = region.stream().map(p -> p.seenFrom(corner)).toList();
        pieces = outside(pieces, near, grid);
      }
    }
    if (pieces.isEmpty()) {
      throw Unreadable.degenerate(result, "nothing is left of the solid");
    }
    return Mesh.union(pieces).transformed(Transform.translation(corner));
  }

  /** What lies outside of a convex region, which is where every plane's height is negative. */
  private static List<Mesh> outside(List<Mesh> pieces, List<Plane> region, double grid) {
    List<Mesh> rest = new ArrayList<>();
    for (Mesh piece : pieces) {
      List<Mesh> parts = new ArrayList<>();
      Mesh inside = piece;
      for (Plane plane : region) {
        Mesh above = PlaneCut.above(inside, plane, grid);
        if (!above.isEmpty()) {
          parts.add(above);
        }
        inside = PlaneCut.above(inside, plane.turned(), grid);
      }
      // A piece that the region does not enter stays whole rather than cut along its planes.
      rest.addAll(inside.isEmpty() ? List.of(piece) : parts);
    }
    return rest;
  }

  /** The convex regions, without overlap, that make up what is taken away. */
  private List<List<Plane>> regions(StepInstance tool) {
    return switch (tool.keyword()) {
      case "IFCHALFSPACESOLID", "IFCBOXEDHALFSPACE" -> List.of(List.of(halfSpace(tool)));
      case "IFCPOLYGONALBOUNDEDHALFSPACE" -> bounded(tool);
      default -> {
        if (!sweeps.reads(tool)) {
          throw Unreadable.unsupported(tool, " as what is taken away from a solid");
        }
        yield extruded(sweeps.extrusion(tool));
      }
    };
  }

  /** Agreement TRUE: the half space is below the plane, where its normal points away from. */
  private static Plane halfSpace(StepInstance tool) {
    StepInstance surface = tool.follow(0);
    if (!surface.keyword().equals("IFCPLANE")) {
      throw Unreadable.unsupported(surface, " as the bound of a half space");
    }
    Transform frame = Axes.placement(surface.follow(0));
    Plane plane = new Plane(frame.origin(), frame.z());
    return tool.isTrue(1) ? plane : plane.turned();
  }

  private List<List<Plane>> bounded(StepInstance tool) {
    Plane half = halfSpace(tool);
    StepInstance boundary = tool.follow(3);
    Outline outline = Outline.of(Rings.ring(boundary, curves.points(boundary)));
    List<List<Plane>> regions = new ArrayList<>();
    for (List<Vec2> ring : convex(outline)) {
      List<Plane> region = new ArrayList<>(List.of(half));
      region.addAll(walls(ring, Axes.placement(tool.follow(2)), Vec3.Z));
      regions.add(region);
    }
    return regions;
  }

  private static List<List<Plane>> extruded(Extrusion solid) {
    Transform frame = solid.frame();
    Vec3 up = solid.sweep().z() > 0 ? frame.z() : frame.z().negated();
    Plane top = new Plane(frame.apply(solid.sweep()), up);
    Plane bottom = new Plane(frame.origin(), up.negated());
    List<List<Plane>> regions = new ArrayList<>();
    for (List<Vec2> ring : convex(solid.section())) {
      List<Plane> region = new ArrayList<>(List.of(top, bottom));
      region.addAll(walls(ring, frame, solid.sweep()));
      regions.add(region);
    }
    return regions;
  }

  /** Planes along the sides of a counter-clockwise ring swept both ways, normals outward. */
  private static List<Plane> walls(List<Vec2> ring, Transform frame, Vec3 sweep) {
    List<Plane> walls = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      Vec2 from = ring.get(i);
      Vec2 side = ring.get((i + 1) % ring.size()).minus(from);
      Vec3 out = new Vec3(side.x(), side.y(), 0).cross(sweep);
      Vec3 normal = frame.direction(sweep.z() > 0 ? out : out.negated()).unit();
      walls.add(new Plane(frame.apply(new Vec3(from.x(), from.y(), 0)), normal));
    }
    return walls;
  }

  /** The outline itself when convex, else its triangles. */
  private static List<List<Vec2>> convex(Outline outline) {
    if (outline.holes().isEmpty() && FlatFace.isConvex(outline.outer())) {
      return List.of(outline.outer());
    }
    Triangulation flat = Triangulation.of(outline);
    return flat.triangles().stream()
        .map(
            t -> List.of(flat.points().get(t[0]), flat.points().get(t[1]), flat.points().get(t[2])))
        .toList();
  }
}
