package org.underlee.layout;

import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Linear;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Plates of sheet in a frame: the building stones of every formed part. */
final class Sheet {
  private Sheet() {}

  /** A plate that stands on the plane {@code z = from} of the frame and is {@code thick} high. */
  static Extrusion plate(Transform frame, Outline outline, double from, double thick) {
    Transform lifted =
        new Transform(frame.apply(new Vec3(0, 0, from)), frame.x(), frame.y(), frame.z());
    return Extrusion.straight(lifted, outline, thick);
  }

  /** The region between two edges, given as x over y, from one y to another. */
  static Outline between(Linear left, Linear right, double from, double to) {
    return Outline.of(ring(left, right, from, to));
  }

  static List<Vec2> ring(Linear left, Linear right, double from, double to) {
    return List.of(
        new Vec2(left.at(from), from),
        new Vec2(right.at(from), from),
        new Vec2(right.at(to), to),
        new Vec2(left.at(to), to));
  }
}
