package org.underlee.ifc.shape;

import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** A curved surface by two parameters, in file units. */
interface ParametricSurface {
  /** The step of a numeric derivative, as a share of {@link #span}. */
  double DERIVATIVE_STEP = 1e-5;

  Vec3 at(Vec2 uv);

  /**
   * The parameters of the surface's point nearest to {@code p}.
   *
   * @param near parameters of a point close by, for surfaces that have to search
   */
  Vec2 parameters(Vec3 p, Vec2 near);

  /** After how much u the surface comes back to itself; nothing when it does not. */
  default double uPeriod() {
    return 0;
  }

  default double vPeriod() {
    return 0;
  }

  /** The values of v at which the surface is one point whatever u: the tip of a cone. */
  default List<Double> poles() {
    return List.of();
  }

  /** How much of u and of v makes a good part of the surface. */
  Vec2 span();

  /** Square to the surface, with the length of the area that a unit of both parameters spans. */
  default Vec3 normal(Vec2 uv) {
    return along(uv, true).cross(along(uv, false));
  }

  /** The way of the point when one of the parameters grows by one. */
  default Vec3 along(Vec2 uv, boolean u) {
    double h = DERIVATIVE_STEP * (u ? span().x() : span().y());
    Vec2 step = u ? new Vec2(h, 0) : new Vec2(0, h);
    return at(uv.plus(step)).minus(at(uv.minus(step))).times(1 / (2 * h));
  }

  /** The same surface with its parameters exchanged. */
  record Exchanged(ParametricSurface of) implements ParametricSurface {
    private static Vec2 exchanged(Vec2 uv) {
      return new Vec2(uv.y(), uv.x());
    }

    @Override
    public Vec3 at(Vec2 uv) {
      return of.at(exchanged(uv));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      return exchanged(of.parameters(p, exchanged(near)));
    }

    @Override
    public double uPeriod() {
      return of.vPeriod();
    }

    @Override
    public double vPeriod() {
      return of.uPeriod();
    }

    @Override
    public Vec2 span() {
      return exchanged(of.span());
    }
  }
}
