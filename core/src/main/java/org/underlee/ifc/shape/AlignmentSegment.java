package org.underlee.ifc.shape;

import java.util.List;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * A piece of a line, arc, spiral or polynomial curve, moved and turned so that it begins in a given
 * place and direction.
 *
 * @param frame its start, with x in its direction
 * @param start where on the whole curve the piece begins
 * @param backwards whether it runs against the whole curve
 */
record AlignmentSegment(
    Transform frame, ParentCurve parent, double start, double length, boolean backwards) {

  static AlignmentSegment of(StepInstance segment) {
    if (!segment.keyword().equals("IFCCURVESEGMENT")) {
      throw Unreadable.unsupported(segment, " as a segment of an alignment");
    }
    double length = measure(segment, 3);
    return new AlignmentSegment(
        Axes.placement(segment.follow(1)),
        parent(segment.follow(4)),
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

  private static ParentCurve parent(StepInstance curve) {
    return switch (curve.keyword()) {
      case "IFCLINE" -> bent(0.0);
      case "IFCCIRCLE" -> bent(1 / Curves.positive(curve, 1));
      case "IFCCLOTHOID" -> bent(0.0, term(curve, 1, 1));
      case "IFCSECONDORDERPOLYNOMIALSPIRAL" ->
          bent(term(curve, 3, 0), term(curve, 2, 1), term(curve, 1, 2));
      case "IFCTHIRDORDERPOLYNOMIALSPIRAL" ->
          bent(term(curve, 4, 0), term(curve, 3, 1), term(curve, 2, 2), term(curve, 1, 3));
      case "IFCPOLYNOMIALCURVE" -> ParentCurve.Polynomial.of(curve);
      default -> throw Unreadable.unsupported(curve, " as a segment of an alignment");
    };
  }

  private static ParentCurve bent(Double... curvature) {
    return new ParentCurve.Bent(List.of(curvature));
  }

  /** A spiral's term A of order n adds A / |A|ⁿ⁺² · sⁿ to the curvature. */
  private static double term(StepInstance curve, int attribute, int order) {
    double a = curve.optionalNumber(attribute).orElse(0);
    return a == 0 ? 0 : a / Math.pow(Math.abs(a), order + 2);
  }

  /** The place at a length from the piece's start. */
  Alignment.Station at(double along) {
    ParentCurve.Reached there = parent.reached(start, along, backwards);
    Vec3 way = new Vec3(Math.cos(there.turn()), Math.sin(there.turn()), 0);
    return Alignment.Station.on(
        frame.apply(new Vec3(there.place().x(), there.place().y(), 0)), frame.direction(way));
  }
}
