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
 * circles, ellipses, B-splines, trimmed ones of these and of lines, composites, and curves on
 * surfaces by their own points in space.
 */
final class Curves {
  private static final double FULL_TURN = 2 * Math.PI;

  /** Composites of composites deeper than this are a loop. */
  private static final int MAX_DEPTH = 32;

  private final double radiansPerAngleUnit;
  private final double sag;
  private final boolean onCurve;

  private Curves(double radiansPerAngleUnit, double sag, boolean onCurve) {
    this.radiansPerAngleUnit = radiansPerAngleUnit;
    this.sag = sag;
    this.onCurve = onCurve;
  }

  /**
   * Curves that bound areas: arcs keep the area under them.
   *
   * @param sag how far a polyline may leave its arc, in file units
   */
  static Curves bounding(double radiansPerAngleUnit, double sag) {
    return new Curves(radiansPerAngleUnit, sag, false);
  }

  /** The same for curves to sweep along: all points of an arc lie on it. */
  Curves toSweepAlong() {
    return new Curves(radiansPerAngleUnit, sag, true);
  }

  /** The same with as many sides to every circle, whatever its radius. */
  Curves withAlikeArcs() {
    return new Curves(radiansPerAngleUnit, Double.POSITIVE_INFINITY, onCurve);
  }

  double sag() {
    return sag;
  }

  double radians(double angle) {
    return angle * radiansPerAngleUnit;
  }

  /**
   * The points in order. Joints of a composite come twice, and a closed curve may repeat its first
   * point: {@link Rings} keeps one of each.
   */
  List<Vec3> points(StepInstance curve) {
    return points(curve, 0);
  }

  private List<Vec3> points(StepInstance curve, int depth) {
    if (depth > MAX_DEPTH) {
      throw Unreadable.degenerate(curve, "curves inside curves deeper than " + MAX_DEPTH);
    }
    return switch (curve.keyword()) {
      case "IFCPOLYLINE" -> curve.followAll(0).stream().map(Axes::point).toList();
      case "IFCINDEXEDPOLYCURVE" -> indexed(curve);
      case "IFCCIRCLE", "IFCELLIPSE" -> closed(conic(curve));
      case "IFCTRIMMEDCURVE" -> trimmed(curve);
      case "IFCCOMPOSITECURVE",
          "IFC2DCOMPOSITECURVE",
          "IFCBOUNDARYCURVE",
          "IFCOUTERBOUNDARYCURVE" ->
          composite(curve, depth);
      case "IFCSURFACECURVE", "IFCSEAMCURVE", "IFCINTERSECTIONCURVE" ->
          points(curve.follow(0), depth + 1);
      default -> {
        if (!SplineCurve.reads(curve.keyword())) {
          throw Unreadable.unsupported(curve, " as an outline");
        }
        yield SplineCurve.of(curve).points();
      }
    };
  }

  private List<Vec3> closed(Arc arc) {
    if (!onCurve) {
      return arc.ring();
    }
    List<Vec3> points = new ArrayList<>(arc.along(0, FULL_TURN));
    points.set(points.size() - 1, points.get(0));
    return points;
  }

  private List<Vec3> between(Arc arc, double from, double to) {
    return onCurve ? arc.along(from, to) : arc.between(from, to);
  }

  Arc conic(StepInstance curve) {
    Transform frame = Axes.placement(curve.follow(0));
    double a = positive(curve, 1);
    double b = curve.keyword().equals("IFCELLIPSE") ? positive(curve, 2) : a;
    return new Arc(frame.origin(), frame.x().times(a), frame.y().times(b), sag);
  }

  static double positive(StepInstance owner, int attribute) {
    double value = owner.number(attribute);
    if (!(value > 0)) {
      throw Unreadable.degenerate(
          owner, "attribute " + (attribute + 1) + " is " + value + ", not a positive length");
    }
    return value;
  }

  private List<Vec3> indexed(StepInstance curve) {
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
      all.addAll(arc ? through(piece) : piece);
    }
    return all;
  }

  private List<Vec3> through(List<Vec3> three) {
    return Arc.through(three.get(0), three.get(1), three.get(2), sag)
        .map(arc -> between(arc, 0, arc.turnTo(three.get(2))))
        .map(points -> ending(points, three.get(2)))
        .orElse(three);
  }

  private static List<Vec3> ending(List<Vec3> points, Vec3 last) {
    List<Vec3> exact = new ArrayList<>(points);
    exact.set(exact.size() - 1, last);
    return exact;
  }

  private List<Vec3> composite(StepInstance curve, int depth) {
    List<Vec3> all = new ArrayList<>();
    for (StepInstance segment : curve.followAll(0)) {
      List<Vec3> piece = new ArrayList<>(points(segment.follow(2), depth + 1));
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
        yield between(arc, from, beyond(from, to, forward));
      }
      case "IFCLINE" -> List.of(onLine(curve, 1, basis), onLine(curve, 2, basis));
      case "IFCPOLYLINE" -> Paths.part(points(basis), numeric(curve, 1), numeric(curve, 2));
      default -> {
        if (!SplineCurve.reads(basis.keyword())) {
          throw Unreadable.unsupported(basis, " as the basis of a trimmed curve");
        }
        yield SplineCurve.of(basis).between(numeric(curve, 1), numeric(curve, 2));
      }
    };
  }

  /** A trim that has to be a parameter. */
  private static double numeric(StepInstance curve, int trim) {
    return parameter(curve, trim)
        .map(StepValue.Numeral::value)
        .orElseThrow(() -> Unreadable.unsupported(curve, " when trimmed by points"));
  }

  /**
   * The end parameter, a turn added or taken so that the arc runs in its sense, at most one turn.
   */
  static double beyond(double from, double to, boolean forward) {
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
        return Axes.point(curve.resolve(r.id()));
      }
    }
    throw curve.error("trim " + trim + " has no parameter and no point");
  }
}
