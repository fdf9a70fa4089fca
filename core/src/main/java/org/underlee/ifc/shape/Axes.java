package org.underlee.ifc.shape;

import java.util.Optional;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Points, directions, axis placements and transformation operators, in file units. Defaults and the
 * squaring of axes follow the functions IfcBuildAxes, IfcBuild2Axes and IfcBaseAxis of the IFC
 * standard; where a reference direction is parallel to the axis the placement is refused.
 */
public final class Axes {
  /** Directions whose sine is below this are parallel: no placement means an angle this small. */
  private static final double PARALLEL = 1e-9;

  private Axes() {}

  static Vec3 point(StepInstance point) {
    if (!point.keyword().equals("IFCCARTESIANPOINT")) {
      throw Unreadable.unsupported(point, " where a Cartesian point is expected");
    }
    return vector(point);
  }

  static Vec3 direction(StepInstance direction) {
    Vec3 d = vector(direction);
    double length = d.length();
    if (!(length > 0)) {
      throw Unreadable.degenerate(direction, "a direction without length");
    }
    return d.times(1 / length);
  }

  private static Vec3 vector(StepInstance owner) {
    double[] c = owner.numbers(0);
    if (c.length < 2 || c.length > 3) {
      throw Unreadable.degenerate(owner, c.length + " coordinates where 2 or 3 are expected");
    }
    return new Vec3(c[0], c[1], c.length == 3 ? c[2] : 0);
  }

  /** An axis placement in two or three dimensions as a rigid frame. */
  public static Transform placement(StepInstance placement) {
    return switch (placement.keyword()) {
      case "IFCAXIS2PLACEMENT3D" -> {
        if (placement.isOmitted(1) && placement.isOmitted(2)) {
          yield Transform.translation(point(placement.follow(0)));
        }
        Vec3 z = given(placement, 1).orElse(Vec3.Z);
        Vec3 x = given(placement, 2).orElseGet(() -> anyX(z));
        yield frame(placement, z, x);
      }
      case "IFCAXIS2PLACEMENT2D" -> {
        if (placement.isOmitted(1)) {
          yield Transform.translation(point(placement.follow(0)));
        }
        Vec3 x = given(placement, 1).orElse(Vec3.X);
        yield frame(placement, Vec3.Z, x.horizontal());
      }
      default -> throw Unreadable.unsupported(placement, " as a placement");
    };
  }

  /**
   * A direction without length stands for none: some programs write (0,0,0) where they have none.
   */
  private static Optional<Vec3> given(StepInstance placement, int attribute) {
    return placement
        .optionalFollow(attribute)
        .map(Axes::vector)
        .filter(d -> d.length() > 0)
        .map(d -> d.times(1 / d.length()));
  }

  /** The frame of an attribute that may be omitted. */
  static Transform optionalPlacement(StepInstance owner, int attribute) {
    return owner.optionalFollow(attribute).map(Axes::placement).orElse(Transform.IDENTITY);
  }

  private static Vec3 anyX(Vec3 z) {
    return z.cross(Vec3.X).length() > PARALLEL ? Vec3.X : Vec3.Z;
  }

  private static Transform frame(StepInstance placement, Vec3 z, Vec3 x) {
    requireApart(placement, z, x);
    return Transform.frame(point(placement.follow(0)), z, x);
  }

  private static void requireApart(StepInstance owner, Vec3 a, Vec3 b) {
    if (a.cross(b).length() <= PARALLEL) {
      throw Unreadable.degenerate(owner, "its axis and its reference direction are parallel");
    }
  }

  /** A Cartesian transformation operator: moves, turns, mirrors and scales. */
  static Transform operator(StepInstance operator) {
    return switch (operator.keyword()) {
      case "IFCCARTESIANTRANSFORMATIONOPERATOR3D",
          "IFCCARTESIANTRANSFORMATIONOPERATOR3DNONUNIFORM" ->
          operator3(operator);
      case "IFCCARTESIANTRANSFORMATIONOPERATOR2D",
          "IFCCARTESIANTRANSFORMATIONOPERATOR2DNONUNIFORM" ->
          operator2(operator);
      default -> throw Unreadable.unsupported(operator, " as a transformation");
    };
  }

  private static Transform operator3(StepInstance op) {
    Vec3 z = op.optionalFollow(4).map(Axes::direction).orElse(Vec3.Z);
    Vec3 xHint = op.optionalFollow(0).map(Axes::direction).orElse(anyX(z));
    requireApart(op, z, xHint);
    Vec3 x = xHint.minus(z.times(xHint.dot(z))).unit();
    Vec3 y = z.cross(x);
    boolean mirrored =
        op.optionalFollow(1).map(Axes::direction).filter(hint -> hint.dot(y) < 0).isPresent();
    double scale = scale(op, 3, 1);
    return new Transform(
        point(op.follow(2)),
        x.times(scale),
        y.times(mirrored ? -scale(op, 5, scale) : scale(op, 5, scale)),
        z.times(scale(op, 6, scale)));
  }

  private static Transform operator2(StepInstance op) {
    Vec3 x = op.optionalFollow(0).map(Axes::direction).orElse(Vec3.X);
    Vec3 y = new Vec3(-x.y(), x.x(), 0);
    boolean mirrored =
        op.optionalFollow(1).map(Axes::direction).filter(hint -> hint.dot(y) < 0).isPresent();
    double scale = scale(op, 3, 1);
    double scale2 = scale(op, 4, scale);
    return new Transform(
        point(op.follow(2)), x.times(scale), y.times(mirrored ? -scale2 : scale2), Vec3.Z);
  }

  private static double scale(StepInstance op, int attribute, double otherwise) {
    double scale = op.optionalNumber(attribute).orElse(otherwise);
    if (!(scale > 0)) {
      throw Unreadable.degenerate(op, "a scale of " + scale);
    }
    return scale;
  }
}
