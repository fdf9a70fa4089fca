package org.underlee.ifc.shape;

import java.util.List;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * A stretch of a line, arc or spiral whose curvature is a polynomial of the length along it: the
 * stretch is moved and turned so that it begins in a given place and direction.
 *
 * @param frame its start, with x in its direction
 * @param curvature coefficients, the constant first, by the length along the whole curve
 * @param start where on the whole curve the stretch begins
 * @param backwards whether it runs against the whole curve
 */
record AlignmentSegment(
    Transform frame, List<Double> curvature, double start, double length, boolean backwards) {
  /** Radians between the places at which the direction is summed up; Simpson's rule between. */
  private static final double STEP = 0.02;

  private static final int MAX_STEPS = 100_000;

  static AlignmentSegment of(StepInstance segment) {
    if (!segment.keyword().equals("IFCCURVESEGMENT")) {
      throw Unreadable.unsupported(segment, " as a segment of an alignment");
    }
    double length = measure(segment, 3);
    return new AlignmentSegment(
        Axes.placement(segment.follow(1)),
        curvature(segment.follow(4)),
        measure(segment, 2),
        Math.abs(length),
        length < 0);
  }

  /** A number that may be wrapped into a measure of length; parameters mean another thing. */
  static double measure(StepInstance owner, int attribute) {
    StepValue value = owner.value(attribute);
    if (value instanceof StepValue.Typed typed) {
      if (!(typed.value() instanceof StepValue.Numeral n)
          || typed.keyword().equals("IFCPARAMETERVALUE")) {
        throw Unreadable.unsupported(owner, " with " + value.words() + " for a length");
      }
      return n.value();
    }
    return owner.number(attribute);
  }

  private static List<Double> curvature(StepInstance curve) {
    return switch (curve.keyword()) {
      case "IFCLINE" -> List.of(0.0);
      case "IFCCIRCLE" -> List.of(1 / Curves.positive(curve, 1));
      case "IFCCLOTHOID" -> List.of(0.0, term(curve, 1, 1));
      case "IFCSECONDORDERPOLYNOMIALSPIRAL" ->
          List.of(term(curve, 3, 0), term(curve, 2, 1), term(curve, 1, 2));
      case "IFCTHIRDORDERPOLYNOMIALSPIRAL" ->
          List.of(term(curve, 4, 0), term(curve, 3, 1), term(curve, 2, 2), term(curve, 1, 3));
      default -> throw Unreadable.unsupported(curve, " as a segment of an alignment");
    };
  }

  /** A spiral's term A of order n adds A / |A|ⁿ⁺² · sⁿ to the curvature. */
  private static double term(StepInstance curve, int attribute, int order) {
    double a = curve.optionalNumber(attribute).orElse(0);
    return a == 0 ? 0 : a / Math.pow(Math.abs(a), order + 2);
  }

  /** The direction at a length along the whole curve. */
  private double heading(double s) {
    double sum = 0;
    for (int i = curvature.size() - 1; i >= 0; i--) {
      sum = (sum + curvature.get(i) / (i + 1)) * s;
    }
    return sum;
  }

  private double turned(double along) {
    return heading(start + (backwards ? -along : along)) - heading(start);
  }

  /** The place at a length from the stretch's start. */
  Alignment.Station at(double along) {
    double most = 0;
    for (int i = 1; i <= 4; i++) {
      most = Math.max(most, Math.abs(turned(along * i / 4)));
    }
    int steps = 2 * (int) Math.min(MAX_STEPS, 1 + Math.ceil(most / STEP));
    double x = 0;
    double y = 0;
    for (int i = 0; i <= steps; i++) {
      double weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
      double angle = turned(along * i / steps);
      x += weight * Math.cos(angle);
      y += weight * Math.sin(angle);
    }
    double third = along / steps / 3;
    double angle = turned(along);
    return new Alignment.Station(
        frame.apply(new Vec3(x * third, y * third, 0)),
        frame.direction(new Vec3(Math.cos(angle), Math.sin(angle), 0)));
  }
}
