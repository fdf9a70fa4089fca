package org.underlee.ifc.shape;

import java.util.List;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Cylinder, sphere and torus about the z axis of a frame; u is the angle about it. */
final class RoundSurfaces {
  private static final double FULL_TURN = 2 * Math.PI;

  private RoundSurfaces() {}

  private static Vec3 turned(double radius, double angle, double z) {
    return new Vec3(radius * Math.cos(angle), radius * Math.sin(angle), z);
  }

  /** v is the height along the axis. */
  record Cylinder(Transform frame, double radius) implements ParametricSurface {
    @Override
    public Vec3 at(Vec2 uv) {
      return frame.apply(turned(radius, uv.x(), uv.y()));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      Vec3 q = frame.toLocal(p);
      return new Vec2(Math.atan2(q.y(), q.x()), q.z());
    }

    @Override
    public double uPeriod() {
      return FULL_TURN;
    }

    @Override
    public Vec2 span() {
      return new Vec2(1, radius);
    }
  }

  /** v is the angle above the equator. */
  record Sphere(Transform frame, double radius) implements ParametricSurface {
    @Override
    public Vec3 at(Vec2 uv) {
      return frame.apply(turned(radius * Math.cos(uv.y()), uv.x(), radius * Math.sin(uv.y())));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      Vec3 q = frame.toLocal(p);
      return new Vec2(Math.atan2(q.y(), q.x()), Math.atan2(q.z(), Math.hypot(q.x(), q.y())));
    }

    @Override
    public double uPeriod() {
      return FULL_TURN;
    }

    @Override
    public List<Double> poles() {
      return List.of(-Math.PI / 2, Math.PI / 2);
    }

    @Override
    public Vec2 span() {
      return new Vec2(1, 1);
    }
  }

  /** v is the angle about the ring's own line, from outside upwards. */
  record Torus(Transform frame, double major, double minor) implements ParametricSurface {
    @Override
    public Vec3 at(Vec2 uv) {
      return frame.apply(
          turned(major + minor * Math.cos(uv.y()), uv.x(), minor * Math.sin(uv.y())));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      Vec3 q = frame.toLocal(p);
      double out = Math.hypot(q.x(), q.y()) - major;
      return new Vec2(Math.atan2(q.y(), q.x()), Math.atan2(q.z(), out));
    }

    @Override
    public double uPeriod() {
      return FULL_TURN;
    }

    @Override
    public double vPeriod() {
      return FULL_TURN;
    }

    @Override
    public Vec2 span() {
      return new Vec2(1, 1);
    }
  }
}
