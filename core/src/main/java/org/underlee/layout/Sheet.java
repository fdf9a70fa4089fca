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

  /**
   * A plane polygon swept straight: sheet of any slant.
   *
   * @param corners in the frame, in one plane, in order around it
   * @param sweep in the frame, out of that plane
   */
  static Extrusion prism(Transform frame, List<Vec3> corners, Vec3 sweep) {
    Vec3 origin = corners.get(0);
    Vec3 normal = Vec3.ZERO;
    for (int i = 1; i + 1 < corners.size(); i++) {
      Vec3 first = corners.get(i).minus(origin);
      normal = normal.plus(first.cross(corners.get(i + 1).minus(origin)));
    }
    Vec3 x = corners.get(1).minus(origin).unit();
    Vec3 z = normal.unit();
    Transform plane = new Transform(origin, x, z.cross(x), z);
    List<Vec2> ring =
        corners.stream().map(plane::toLocal).map(c -> new Vec2(c.x(), c.y())).toList();
    Vec3 local = new Vec3(sweep.dot(plane.x()), sweep.dot(plane.y()), sweep.dot(plane.z()));
    return new Extrusion(frame.after(plane), Outline.of(ring), local);
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
