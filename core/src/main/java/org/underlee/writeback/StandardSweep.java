package org.underlee.writeback;

import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * An extrusion in the form that IFC can hold: a right-handed frame of unit, square axes and a sweep
 * toward +z. The solid is the same.
 */
final class StandardSweep {
  /** How far axes may be from unit length and square: far above noise, far below any shape. */
  private static final double RIGID = 1e-9;

  private StandardSweep() {}

  /**
   * @throws IllegalArgumentException when the frame stretches or skews, or the sweep is flat
   */
  static Extrusion of(Extrusion e) {
    requireRigid(e);
    Extrusion right = e.frame().determinant() < 0 ? unmirrored(e) : e;
    Extrusion up = right.sweep().z() < 0 ? upward(right) : right;
    Transform frame = up.frame();
    return new Extrusion(
        Transform.frame(frame.origin(), frame.z(), frame.x()), up.section(), up.sweep());
  }

  private static void requireRigid(Extrusion e) {
    Transform f = e.frame();
    double worst = 0;
    for (Vec3 axis : List.of(f.x(), f.y(), f.z())) {
      worst = Math.max(worst, Math.abs(axis.length() - 1));
    }
    worst = Math.max(worst, Math.abs(f.x().dot(f.y())));
    worst = Math.max(worst, Math.abs(f.y().dot(f.z())));
    worst = Math.max(worst, Math.abs(f.z().dot(f.x())));
    if (!(worst < RIGID)) {
      throw new IllegalArgumentException("the frame of an extrusion is not rigid: " + f);
    }
    if (e.sweep().z() == 0) {
      throw new IllegalArgumentException("an extrusion within its own plane: " + e.sweep());
    }
  }

  /** Turns the frame's x axis over, and everything in the frame with it. */
  private static Extrusion unmirrored(Extrusion e) {
    Transform f = e.frame();
    Outline section =
        new Outline(
            mirrored(e.section().outer()),
            e.section().holes().stream().map(StandardSweep::mirrored).toList());
    Vec3 s = e.sweep();
    return new Extrusion(
        new Transform(f.origin(), f.x().negated(), f.y(), f.z()),
        section,
        new Vec3(-s.x(), s.y(), s.z()));
  }

  private static List<Vec2> mirrored(List<Vec2> ring) {
    return ring.stream().map(p -> new Vec2(-p.x(), p.y())).toList();
  }

  /** Starts from the other end. */
  private static Extrusion upward(Extrusion e) {
    Transform f = e.frame();
    Transform moved = new Transform(f.apply(e.sweep()), f.x(), f.y(), f.z());
    return new Extrusion(moved, e.section(), e.sweep().negated());
  }
}
