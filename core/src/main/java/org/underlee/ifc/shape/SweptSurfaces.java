package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Surfaces that a curve leaves behind: drawn along a line, or turned about one. */
final class SweptSurfaces {
  private static final double FULL_TURN = 2 * Math.PI;

  private SweptSurfaces() {}

  /**
   * u is the length along the curve, v the way in the direction.
   *
   * @param flat the curve seen along the direction
   * @param direction of length one
   */
  record Extruded(Track flat, Vec3 direction) implements ParametricSurface {
    static Extruded of(List<Vec3> points, Vec3 direction) {
      return new Extruded(
          new Track(points.stream().map(p -> seen(p, direction)).toList()), direction);
    }

    private static Vec3 seen(Vec3 p, Vec3 direction) {
      return p.minus(direction.times(p.dot(direction)));
    }

    @Override
    public Vec3 at(Vec2 uv) {
      return flat.at(wrapped(uv.x())).plus(direction.times(uv.y()));
    }

    private double wrapped(double u) {
      double period = uPeriod();
      return period > 0 ? u - period * Math.floor(u / period) : u;
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      return new Vec2(flat.nearest(seen(p, direction)), p.dot(direction));
    }

    @Override
    public double uPeriod() {
      return flat.isClosed() ? flat.length() : 0;
    }

    @Override
    public Vec2 span() {
      return new Vec2(flat.length(), flat.length());
    }
  }

  /**
   * u is the angle from the curve, v the length along it.
   *
   * @param frame with z along the axis
   * @param meridian the curve turned into the frame's xz plane
   * @param start the angle at which the curve lies
   */
  record Revolved(Transform frame, Track meridian, double start) implements ParametricSurface {
    /** Ends of the curve nearer to the axis than this share of its length are on it. */
    private static final double ON_AXIS = 1e-9;

    static Revolved of(Transform frame, List<Vec3> points) {
      List<Vec3> meridian = new ArrayList<>();
      double start = 0;
      double furthest = 0;
      for (Vec3 p : points) {
        Vec3 q = frame.toLocal(p);
        double out = Math.hypot(q.x(), q.y());
        if (out > furthest) {
          furthest = out;
          start = Math.atan2(q.y(), q.x());
        }
        meridian.add(new Vec3(out, 0, q.z()));
      }
      return new Revolved(frame, new Track(meridian), start);
    }

    @Override
    public Vec3 at(Vec2 uv) {
      Vec3 m = meridian.at(uv.y());
      double angle = start + uv.x();
      return frame.apply(new Vec3(m.x() * Math.cos(angle), m.x() * Math.sin(angle), m.z()));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      Vec3 q = frame.toLocal(p);
      double v = meridian.nearest(new Vec3(Math.hypot(q.x(), q.y()), 0, q.z()));
      return new Vec2(Math.atan2(q.y(), q.x()) - start, v);
    }

    @Override
    public double uPeriod() {
      return FULL_TURN;
    }

    @Override
    public double vPeriod() {
      return meridian.isClosed() ? meridian.length() : 0;
    }

    @Override
    public List<Double> poles() {
      List<Double> poles = new ArrayList<>();
      for (double end : new double[] {0, meridian.length()}) {
        if (meridian.at(end).x() <= ON_AXIS * meridian.length()) {
          poles.add(end);
        }
      }
      return poles;
    }

    @Override
    public Vec2 span() {
      return new Vec2(1, meridian.length());
    }
  }
}
