package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/** B-spline and Bézier curves, rational or not. */
record SplineCurve(BSpline spline, List<BSpline.Weighted> control) {
  /** Points on each span of a curve of degree one; more for higher degrees, which bend more. */
  private static final int STEPS_PER_DEGREE = 6;

  /** Points of a whole curve at most. */
  private static final int MAX_STEPS = 20_000;

  /** A chord of a circle's turn t falls short of it by t / 8 of its length. */
  private static final double SAG_PER_CHORD = 2 * Math.PI / EdgeLoops.SIDES / 8;

  /** A stretch is halved this often at most: a kink never becomes smooth. */
  private static final int MAX_HALVINGS = 6;

  static boolean reads(String keyword) {
    return keyword.equals("IFCBSPLINECURVEWITHKNOTS")
        || keyword.equals("IFCRATIONALBSPLINECURVEWITHKNOTS")
        || keyword.equals("IFCBEZIERCURVE")
        || keyword.equals("IFCRATIONALBEZIERCURVE");
  }

  static SplineCurve of(StepInstance curve) {
    int degree = BSpline.whole(curve, 0);
    List<Vec3> points = BSpline.points(curve, curve.list(1));
    boolean bezier = curve.keyword().endsWith("BEZIERCURVE");
    int weights = curve.keyword().startsWith("IFCRATIONAL") ? (bezier ? 5 : 8) : -1;
    double[] w = weights < 0 ? new double[0] : curve.numbers(weights);
    BSpline spline =
        bezier
            ? BSpline.bezier(curve, degree, points.size())
            : BSpline.of(curve, degree, 5, 6, points.size());
    return new SplineCurve(spline, BSpline.weighted(curve, points, w));
  }

  List<Vec3> points() {
    return between(spline.from(), spline.to());
  }

  /**
   * The whole curve with chords that stand off it by no more than those of a circle with {@link
   * EdgeLoops#SIDES} sides.
   */
  List<Vec3> smooth() {
    double[] spans = spline.spans();
    int steps = spline.degree() == 1 ? 1 : 2 * spline.degree();
    List<Vec3> points = new ArrayList<>(List.of(at(spline.from())));
    for (int i = 0; i + 1 < spans.length; i++) {
      for (int k = 0; k < steps; k++) {
        double width = (spans[i + 1] - spans[i]) / steps;
        double from = spans[i] + width * k;
        refine(points, from, k + 1 == steps ? spans[i + 1] : from + width, 0);
      }
    }
    return points;
  }

  /** Adds the curve from the last point on to a parameter. */
  private void refine(List<Vec3> points, double from, double to, int depth) {
    if (points.size() > MAX_STEPS) {
      throw new IllegalArgumentException("a B-spline with more than " + MAX_STEPS + " points");
    }
    Vec3 a = points.get(points.size() - 1);
    Vec3 b = at(to);
    double middle = (from + to) / 2;
    double off = at(middle).distance(a.plus(b).times(0.5));
    if (depth < MAX_HALVINGS && off > SAG_PER_CHORD * a.distance(b)) {
      refine(points, from, middle, depth + 1);
      refine(points, middle, to, depth + 1);
    } else {
      points.add(b);
    }
  }

  /** Points from one parameter to the other; backwards when {@code to < from}. */
  List<Vec3> between(double from, double to) {
    double[] spans = spline.spans();
    int steps = spline.degree() == 1 ? 1 : STEPS_PER_DEGREE * spline.degree();
    if ((long) steps * spans.length > MAX_STEPS) {
      throw new IllegalArgumentException("a B-spline of " + spans.length + " spans");
    }
    double low = Math.min(from, to);
    double high = Math.max(from, to);
    List<Vec3> points = new ArrayList<>();
    points.add(at(low));
    for (int i = 0; i + 1 < spans.length; i++) {
      for (int k = 0; k < steps; k++) {
        double t = spans[i] + (spans[i + 1] - spans[i]) * k / steps;
        if (t > low && t < high) {
          points.add(at(t));
        }
      }
    }
    points.add(at(high));
    if (to < from) {
      java.util.Collections.reverse(points);
    }
    return points;
  }

  private Vec3 at(double t) {
    return spline.at(t, control).project();
  }
}
