package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Solids turned about an axis: revolved areas, with one section or tapered to another, and the
 * sphere and the cone. Distances from the axis are a little enlarged between the ends, as on an
 * {@link Arc}, so that volumes come out exact.
 */
final class Revolutions {
  private static final double FULL_TURN = 2 * Math.PI;

  private final Profiles profiles;
  private final Curves curves;

  Revolutions(Profiles profiles, Curves curves) {
    this.profiles = profiles;
    this.curves = curves;
  }

  Map<String, ItemReader> readers() {
    return Map.of(
        "IFCREVOLVEDAREASOLID", this::revolved,
        "IFCREVOLVEDAREASOLIDTAPERED", this::tapered,
        "IFCSPHERE", this::sphere,
        "IFCRIGHTCIRCULARCONE", this::cone);
  }

  private Mesh revolved(StepInstance solid) {
    return Mesh.union(
        profiles.outlines(solid.follow(0)).stream().map(o -> turned(solid, o, o)).toList());
  }

  private Mesh tapered(StepInstance solid) {
    Profiles coarse = profiles.withAlikeArcs();
    Outline first = coarse.only(solid.follow(0));
    Outline last = coarse.only(solid.follow(4));
    Loft.requireAlike(solid, first, last);
    return turned(solid, first, last);
  }

  private Mesh turned(StepInstance solid, Outline first, Outline last) {
    StepInstance axis = solid.follow(2);
    Vec3 origin = Axes.point(axis.follow(0));
    Vec3 along = axis.optionalFollow(1).map(Axes::direction).orElse(Vec3.Z);
    double angle = curves.radians(solid.number(3));
    if (!(Math.abs(angle) > 0)) {
      throw Unreadable.degenerate(solid, "it turns by " + angle + " radians");
    }
    double turn = Math.copySign(Math.min(Math.abs(angle), FULL_TURN), angle);
    return around(
        Axes.optionalPlacement(solid, 1), new Turn(origin, along, turn, curves.sag()), first, last);
  }

  /** A turn about an axis that lies in the plane of the section. */
  private record Turn(Vec3 origin, Vec3 along, double angle, double sag) {
    boolean isFull() {
      // Within a thousandth of a degree, as angles are written with few digits.
      return Math.abs(angle) > FULL_TURN - 2e-5;
    }

    int steps(double radius) {
      int steps = new Arc(Vec3.ZERO, Vec3.X.times(radius), Vec3.Y, sag).sides(Math.abs(angle));
      return Math.max(2, steps);
    }

    double outward(int steps) {
      double step = FULL_TURN / steps;
      return isFull() ? Math.sqrt(step / Math.sin(step)) : Arc.outward(Math.abs(angle), steps);
    }

    double radius(Vec3 p) {
      return p.minus(origin).cross(along).length();
    }

    Vec3 apply(Vec3 p, double turned, double out) {
      Vec3 d = p.minus(origin);
      Vec3 axial = along.times(d.dot(along));
      Vec3 radial = d.minus(axial).times(out);
      Vec3 side = along.cross(radial);
      return origin
          .plus(axial)
          .plus(radial.times(Math.cos(turned)))
          .plus(side.times(Math.sin(turned)));
    }
  }

  private static Mesh around(Transform frame, Turn turn, Outline first, Outline last) {
    List<Vec2> from = Loft.points(first);
    List<Vec2> to = Loft.points(last);
    double radius = from.stream().mapToDouble(p -> turn.radius(flat(p))).max().orElse(0);
    int steps = turn.steps(radius);
    double out = turn.outward(steps);
    List<List<Vec3>> stations = new ArrayList<>();
    for (int i = 0; i <= steps; i++) {
      boolean end = i == 0 || i == steps;
      double share = (double) i / steps;
      double factor = end && !turn.isFull() ? 1 : out;
      stations.add(
          Loft.between(from, to, share).stream()
              .map(p -> frame.apply(turn.apply(flat(p), share * turn.angle(), factor)))
              .toList());
    }
    if (turn.isFull()) {
      stations.remove(steps);
    }
    return Loft.mesh(first, last, stations, turn.isFull());
  }

  private static Vec3 flat(Vec2 p) {
    return new Vec3(p.x(), p.y(), 0);
  }

  /** A half disc turned about its diameter; corners moved out for the volume of the sphere. */
  private Mesh sphere(StepInstance solid) {
    double r = Curves.positive(solid, 1);
    List<Vec2> half = new ArrayList<>();
    // Three times as fine as a circle: both of its curvatures move the corners out.
    int sides = 3 * new Arc(Vec3.ZERO, Vec3.X.times(r), Vec3.Y, curves.sag()).sides(Math.PI);
    for (int i = 0; i <= sides; i++) {
      double t = Math.PI * i / sides - Math.PI / 2;
      half.add(new Vec2(i == 0 || i == sides ? 0 : r * Math.cos(t), r * Math.sin(t)));
    }
    Mesh mesh = aboutZ(Axes.placement(solid.follow(0)), half, curves.sag() / 4);
    double grow = Math.cbrt(4 * Math.PI / 3 * r * r * r / mesh.volume());
    Vec3 centre = Axes.placement(solid.follow(0)).origin();
    return mesh.transformed(
        Transform.translation(centre)
            .after(Transform.scaling(grow))
            .after(Transform.translation(centre.negated())));
  }

  private Mesh cone(StepInstance solid) {
    double height = Curves.positive(solid, 1);
    List<Vec2> half =
        List.of(new Vec2(0, 0), new Vec2(Curves.positive(solid, 2), 0), new Vec2(0, height));
    return aboutZ(Axes.placement(solid.follow(0)), half, curves.sag());
  }

  /** Points as distance from the axis and height. */
  private static Mesh aboutZ(Transform frame, List<Vec2> half, double sag) {
    Transform upright = frame.after(new Transform(Vec3.ZERO, Vec3.X, Vec3.Z, Vec3.Y.negated()));
    Outline section = Outline.of(half);
    return around(upright, new Turn(Vec3.ZERO, Vec3.Y, FULL_TURN, sag), section, section);
  }
}
