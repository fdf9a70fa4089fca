package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * The knots and degree of a B-spline in one direction, and the rational combination of its control
 * points by de Boor's algorithm (C. de Boor, A Practical Guide to Splines, chapter X).
 */
final class BSpline {
  /** Higher degrees are damage: no building program writes more than nine. */
  private static final int MAX_DEGREE = 32;

  private static final int MAX_KNOTS = 100_000;

  private final int degree;

  /** Each as often as its multiplicity says, rising. */
  private final double[] knots;

  private BSpline(int degree, double[] knots) {
    this.degree = degree;
    this.knots = knots;
  }

  int degree() {
    return degree;
  }

  /** A control point with its weight, times that weight. */
  record Weighted(Vec3 point, double weight) {
    static Weighted of(Vec3 p, double weight) {
      return new Weighted(p.times(weight), weight);
    }

    Weighted mix(Weighted other, double share) {
      return new Weighted(
          point.times(1 - share).plus(other.point.times(share)),
          weight * (1 - share) + other.weight * share);
    }

    Vec3 project() {
      return point.times(1 / weight);
    }
  }

  /** From the attributes for multiplicities and for distinct knots. */
  static BSpline of(StepInstance owner, int degree, int multiplicities, int values, int points) {
    double[] times = owner.numbers(multiplicities);
    double[] distinct = owner.numbers(values);
    List<Double> all = new ArrayList<>();
    for (int i = 0; i < Math.min(times.length, distinct.length); i++) {
      for (int k = 0; k < Math.min(times[i], MAX_KNOTS); k++) {
        all.add(distinct[i]);
      }
    }
    return checked(owner, degree, all.stream().mapToDouble(d -> d).toArray(), points);
  }

  /** Bézier pieces end to end, as IFC2X3 has them without knots: one unit of parameter a piece. */
  static BSpline bezier(StepInstance owner, int degree, int points) {
    List<Double> all = new ArrayList<>(List.of(0.0));
    for (int i = 0; i < points + degree - 1; i++) {
      all.add(Math.floor((double) i / Math.max(1, degree)));
    }
    all.add(all.get(all.size() - 1));
    return checked(owner, degree, all.stream().mapToDouble(d -> d).toArray(), points);
  }

  private static BSpline checked(StepInstance owner, int degree, double[] knots, int points) {
    boolean rising = true;
    for (int i = 1; i < knots.length; i++) {
      rising &= knots[i - 1] <= knots[i];
    }
    if (degree < 1 || degree > MAX_DEGREE || knots.length != points + degree + 1 || !rising) {
      throw Unreadable.degenerate(
          owner,
          knots.length + " knots do not fit " + points + " control points of degree " + degree);
    }
    BSpline spline = new BSpline(degree, knots);
    if (!(spline.from() < spline.to())) {
      throw Unreadable.degenerate(owner, "its knots span nothing");
    }
    return spline;
  }

  double from() {
    return knots[degree];
  }

  double to() {
    return knots[knots.length - 1 - degree];
  }

  /** The knots inside the range where the spline is defined, each once, ends included. */
  double[] spans() {
    return Arrays.stream(knots).filter(k -> k >= from() && k <= to()).distinct().toArray();
  }

  Weighted at(double parameter, List<Weighted> control) {
    double t = Math.min(to(), Math.max(from(), parameter));
    int span = degree;
    while (span < control.size() - 1 && knots[span + 1] <= t) {
      span++;
    }
    Weighted[] d = new Weighted[degree + 1];
    for (int i = 0; i <= degree; i++) {
      d[i] = control.get(span - degree + i);
    }
    for (int r = 1; r <= degree; r++) {
      for (int i = degree; i >= r; i--) {
        double low = knots[span - degree + i];
        double run = knots[i + 1 + span - r] - low;
        d[i] = d[i - 1].mix(d[i], run > 0 ? (t - low) / run : 0);
      }
    }
    return d[degree];
  }

  /** A whole number attribute such as a degree. */
  static int whole(StepInstance owner, int attribute) {
    double n = owner.number(attribute);
    if (!(n >= 0 && n <= MAX_KNOTS)) {
      throw Unreadable.degenerate(owner, "attribute " + (attribute + 1) + " is " + n);
    }
    return (int) n;
  }

  /** A row of weights, or ones where the spline is not rational. */
  static List<Weighted> weighted(StepInstance owner, List<Vec3> points, double[] weights) {
    List<Weighted> control = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      double w = weights.length == 0 ? 1 : i < weights.length ? weights[i] : 0;
      if (!(w > 0)) {
        throw Unreadable.degenerate(owner, "a control point has the weight " + w);
      }
      control.add(Weighted.of(points.get(i), w));
    }
    return control;
  }

  static List<Vec3> points(StepInstance owner, List<StepValue> references) {
    List<Vec3> points = new ArrayList<>();
    for (StepValue v : references) {
      if (!(v instanceof StepValue.Reference r)) {
        throw owner.error("a control point should be a reference but is " + v.words());
      }
      points.add(Axes.point(owner.resolve(r.id())));
    }
    return points;
  }
}
