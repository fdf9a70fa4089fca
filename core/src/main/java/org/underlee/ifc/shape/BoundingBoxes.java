package org.underlee.ifc.shape;

import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/** The box around an element, for want of its body. */
final class BoundingBoxes {
  private BoundingBoxes() {}

  static Mesh read(StepInstance box) {
    Vec3 corner = Axes.point(box.follow(0));
    Outline base = Outline.rectangle(0, 0, Curves.positive(box, 1), Curves.positive(box, 2));
    return Extrusion.straight(Transform.translation(corner), base, Curves.positive(box, 3)).mesh();
  }
}
