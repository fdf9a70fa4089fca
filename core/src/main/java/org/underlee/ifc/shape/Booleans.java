package org.underlee.ifc.shape;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Boolean results: differences by plane cuts where what is taken away falls into convex regions
 * ({@link Cutters}), the others through {@link SpacePartition}.
 */
final class Booleans {
  private final ShapeReader shapes;
  private final Cutters cutters;

  Booleans(ShapeReader shapes, Cutters cutters) {
    this.shapes = shapes;
    this.cutters = cutters;
  }

  Map<String, ItemReader> readers() {
    return Map.of(
        "IFCBOOLEANCLIPPINGRESULT", this::result,
        "IFCBOOLEANRESULT", this::result,
        "IFCCSGSOLID", solid -> shapes.read(solid.follow(0)));
  }

  private Mesh result(StepInstance result) {
    Mesh mesh =
        switch (result.enumeration(0)) {
          case "DIFFERENCE" -> difference(result);
          case "UNION" -> union(result);
          case "INTERSECTION" -> intersection(result);
          default -> throw Unreadable.unsupported(result, " for " + result.enumeration(0));
        };
    if (mesh.isEmpty()) {
      throw Unreadable.degenerate(result, "nothing is left of the solid");
    }
    return mesh;
  }

  /** Walks down the first operands to the solid, then takes away the second ones in turn. */
  private Mesh difference(StepInstance result) {
    Deque<StepInstance> takenAway = new ArrayDeque<>();
    Set<Long> seen = new HashSet<>();
    StepInstance solid = result;
    while (isDifference(solid)) {
      if (!seen.add(solid.id())) {
        throw Unreadable.degenerate(solid, "the result is its own operand");
      }
      takenAway.push(solid.follow(2));
      solid = solid.follow(1);
    }
    Mesh placed = MeshBuilder.welded(shapes.read(solid));
    // Cut about a corner of the solid: far from the origin the grid of the cuts would be coarse.
    Vec3 corner = placed.isEmpty() ? Vec3.ZERO : placed.vertex(0);
    Transform near = Transform.translation(corner.negated());
    Mesh whole = placed.transformed(near);
    double grid = Math.max(PlaneCut.grid(whole), PlaneCut.noise(placed));
    CutWork work = new CutWork();
    Mesh rest;
    try {
      rest = Cutter.takeAll(whole, tools(takenAway, cutters::read, near), grid, work);
    } catch (IllegalStateException | IllegalArgumentException unsound) {
      if (takenAway.stream().noneMatch(Booleans::isDifference)) {
        throw unsound;
      }
      rest = Cutter.takeAll(whole, tools(takenAway, cutters::inPlanes, near), grid, work);
    }
    return rest.transformed(Transform.translation(corner));
  }

  private static List<Cutter> tools(
      Deque<StepInstance> takenAway, Function<StepInstance, Cutter> reader, Transform near) {
    return takenAway.stream().map(reader).map(tool -> tool.transformed(near)).toList();
  }

  static boolean isDifference(StepInstance item) {
    return (item.keyword().equals("IFCBOOLEANRESULT")
            || item.keyword().equals("IFCBOOLEANCLIPPINGRESULT"))
        && item.enumeration(0).equals("DIFFERENCE");
  }

  private Mesh union(StepInstance result) {
    for (int operand = 1; operand <= 2; operand++) {
      if (Cutters.isHalfSpace(result.follow(operand))) {
        throw Unreadable.degenerate(result, "a union with a half space has no end");
      }
    }
    Mesh a = operand(result, 1);
    Mesh b = operand(result, 2);
    if (!a.bounds().meets(b.bounds())) {
      return Mesh.union(List.of(a, b));
    }
    return SpacePartition.union(a, b, Math.max(PlaneCut.grid(a), PlaneCut.grid(b)));
  }

  private Mesh intersection(StepInstance result) {
    boolean swapped = Cutters.isHalfSpace(result.follow(1));
    Mesh solid = operand(result, swapped ? 2 : 1);
    double grid = PlaneCut.grid(solid);
    if (cutters.read(result.follow(swapped ? 1 : 2)) instanceof Cutter.Regions regions) {
      CutWork work = new CutWork();
      return Mesh.union(
          regions.convex().stream().map(r -> PlaneCut.below(solid, r, grid, work)).toList());
    }
    return SpacePartition.intersection(solid, operand(result, swapped ? 1 : 2), grid);
  }

  private Mesh operand(StepInstance result, int attribute) {
    return MeshBuilder.welded(shapes.read(result.follow(attribute)));
  }
}
