package org.underlee.ifc.shape;

import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * The worked example of a shape: {@code EXAMPLEWEDGE(corner, length, width, height)}, a door wedge
 * that lies on its side and starts at its thin edge. No schema has it.
 */
final class Wedge {
  private Wedge() {}

  static Mesh read(StepInstance wedge) {
    Vec3 corner = Axes.point(wedge.follow(0));
    double length = Curves.positive(wedge, 1);
    double height = Curves.positive(wedge, 3);
    Outline side =
        Outline.of(List.of(new Vec2(0, 0), new Vec2(length, 0), new Vec2(length, height)));
    return Extrusion.straight(Transform.translation(corner), side, Curves.positive(wedge, 2))
        .mesh();
  }
}
