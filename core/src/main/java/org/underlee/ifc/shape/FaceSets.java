package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** Tessellations of IFC4: triangulated and polygonal face sets. */
final class FaceSets {
  Map<String, ItemReader> readers() {
    return Map.of(
        "IFCTRIANGULATEDFACESET", this::triangulated,
        "IFCPOLYGONALFACESET", this::polygonal);
  }

  private Mesh triangulated(StepInstance set) {
    List<Vec3> points = renumbered(set, PointLists.points(set.follow(0)), 4);
    MeshBuilder builder = new MeshBuilder();
    for (StepValue row : set.list(3)) {
      int[] t = PointLists.indices(set, row, points.size());
      if (t.length != 3) {
        throw set.error("a triangle of " + t.length + " points");
      }
      builder.triangle(
          builder.vertex(points.get(t[0])),
          builder.vertex(points.get(t[1])),
          builder.vertex(points.get(t[2])));
    }
    return Orientation.outward(builder.mesh(), set.isTrue(2));
  }

  private Mesh polygonal(StepInstance set) {
    List<Vec3> points = renumbered(set, PointLists.points(set.follow(0)), 3);
    MeshBuilder builder = new MeshBuilder();
    for (StepInstance face : set.followAll(2)) {
      List<List<Vec3>> holes = new ArrayList<>();
      for (StepValue hole : face.list(1)) {
        holes.add(ring(face, hole, points));
      }
      try {
        builder.face(ring(face, face.value(0), points), holes);
      } catch (IllegalArgumentException e) {
        throw Unreadable.degenerate(face, String.valueOf(e.getMessage()));
      }
    }
    return Orientation.outward(builder.mesh(), set.isTrue(1));
  }

  private static List<Vec3> ring(StepInstance face, StepValue numbers, List<Vec3> points) {
    return Arrays.stream(PointLists.indices(face, numbers, points.size()))
        .mapToObj(points::get)
        .toList();
  }

  /** The points in the order of PnIndex, where the set has one. */
  private static List<Vec3> renumbered(StepInstance set, List<Vec3> points, int attribute) {
    if (set.isOmitted(attribute)) {
      return points;
    }
    return Arrays.stream(PointLists.indices(set, set.value(attribute), points.size()))
        .mapToObj(points::get)
        .toList();
  }
}
