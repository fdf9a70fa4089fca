package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * Bounded curves as polylines in file units: polylines, indexed polycurves of lines and arcs,
 * circles, ellipses, trimmed circles, ellipses and lines, and composites of these.
 */
final class Curves {
  private static final double FULL_TURN = 2 * Math.PI;

  private final double radiansPerAngleUnit;

  Curves(double radiansPerAngleUnit) {
    this.radiansPerAngleUnit = radiansPerAngleUnit;
  }

  /**
   * The points in order. Joints of a composite come twice, and a closed curve may repeat its first
   * point: {@link Rings} keeps one of each.
   */
  List<Vec3> points(StepInstance curve) {
    return switch (curve.keyword()) {
      case "IFCPOLYLINE" -> curve.followAll(0).stream().map(Axes::point).toList();
      case "IFCINDEXEDPOLYCURVE" -> indexed(curve);
      case "IFCCIRCLE", "IFCELLIPSE" -> conic(curve).ring();
      case "IFCTRIMMEDCURVE" -> trimmed(curve);
      case "IFCCOMPOSITECURVE", "IFC2DCOMPOSITECURVE" -> composite(curve);
      default -> throw Unreadable.unsupported(curve, " as an outline");
    };
  }

  private static Arc conic(StepInstance curve) {
    Transform frame = Axes.placement(curve.follow(0));
    double a = positive(curve, 1);
    double b = curve.keyword().equals("IFCELLIPSE") ? positive(curve, 2) : a;
    return new Arc(frame.origin(), frame.x().times(a), frame.y().times(b));
  }

  static double positive(StepInstance owner, int attribute) {
    double value = owner.number(attribute);
    if (!(value > 0)) {
      throw Unreadable.degenerate(
          owner, "attribute " + (attribute + 1) + " is " + value + ", not a positive length");
    }
    return value;
  }

  private static List<Vec3> indexed(StepInstance curve) {
    List<Vec3> points = PointLists.points(curve.follow(0));
    if (curve.isOmitted(1)) {
      return points;
    }
    List<Vec3> all = new ArrayList<>();
    for (StepValue segment : curve.list(1)) {
      if (!(segment instanceof StepValue.Typed typed)) {
        throw curve.error("segment " + segment.words() + " is no line index and no arc index");
      }
      int[] at = PointLists.indices(curve, typed.value(), points.size());
      List<Vec3> piece = Arrays.stream(at).mapToObj(points::get).toList();
      boolean arc = typed.keyword().equals("IFCARCINDEX") && piece.size() == 3;
      all.addAll(arc ? Arc.through(piece.get(0), piece.get(1), piece.get(2)) : piece);
    }
    return all;
  }

  private List<Vec3> composite(StepInstance curve) {
    List<Vec3> all = new ArrayList<>();
    for (StepInstance segment : curve.followAll(0)) {
      StepInstance parent = segment.follow(2);
      if (parent.keyword().equals("IFCCOMPOSITECURVE")) {
        throw Unreadable.unsupported(parent, " inside another composite curve");
      }
      List<Vec3> piece = new ArrayList<>(points(parent));
      if (!segment.isTrue(1)) {
        Collections.reverse(piece);
      }
      all.addAll(piece);
    }
    return all;
  }

  private List<Vec3> trimmed(StepInstance curve) {
    StepInstance basis = curve.follow(0);
    boolean forward = curve.isTrue(3);
    return switch (basis.keyword()) {
      case "IFCCIRCLE", "IFCELLIPSE" -> {
        Arc arc = conic(basis);
        double from = angle(curve, 1, arc);
        double to = angle(curve, 2, arc);
        yield arc.between(from, beyond(from, to, forward));
      }
      case "IFCLINE" -> List.of(onLine(curve, 1, basis), onLine(curve, 2, basis));
      default -> throw Unreadable.unsupported(basis, " as the basis of a trimmed curve");
    };
  }

  /**
   * The end parameter, a turn added or taken so that the arc runs in its sense, at most one turn.
   */
  private static double beyond(double from, double to, boolean forward) {
    double turn = (to - from) % FULL_TURN;
    // Less than this is the full circle that some programs write with both trims in one place.
    double none = 1e-9;
    if (forward) {
      return from + (turn > none ? turn : turn + FULL_TURN);
    }
    return from + (turn < -none ? turn : turn - FULL_TURN);
  }

  private double angle(StepInstance curve, int trim, Arc arc) {
    Optional<StepValue.Numeral> parameter = parameter(curve, trim);
    return parameter.isPresent()
        ? parameter.get().value() * radiansPerAngleUnit
        : arc.parameter(trimPoint(curve, trim));
  }

  private static Vec3 onLine(StepInstance curve, int trim, StepInstance line) {
    Optional<StepValue.Numeral> parameter = parameter(curve, trim);
    if (parameter.isEmpty()) {
      return trimPoint(curve, trim);
    }
    StepInstance vector = line.follow(1);
    Vec3 step = Axes.direction(vector.follow(0)).times(vector.number(1));
    return Axes.point(line.follow(0)).plus(step.times(parameter.get().value()));
  }

  /** The trim's parameter value, unless a point is there and preferred. */
  private static Optional<StepValue.Numeral> parameter(StepInstance curve, int trim) {
    boolean point = curve.list(trim).stream().anyMatch(v -> v instanceof StepValue.Reference);
    if (point && curve.optionalEnumeration(4).filter("CARTESIAN"::equals).isPresent()) {
      return Optional.empty();
    }
    return curve.list(trim).stream()
        .filter(v -> v instanceof StepValue.Typed t && t.value() instanceof StepValue.Numeral)
        .map(v -> (StepValue.Numeral) ((StepValue.Typed) v).value())
        .findFirst();
  }

  private static Vec3 trimPoint(StepInstance curve, int trim) {
    for (StepValue v : curve.list(trim)) {
      if (v instanceof StepValue.Reference r) {
        return Axes.point(curve.resolve(r));
      }
    }
    throw curve.error("trim " + trim + " has no parameter and no point");
  }
}
