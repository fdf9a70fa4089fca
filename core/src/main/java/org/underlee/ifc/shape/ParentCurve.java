package org.underlee.ifc.shape;

import java.util.Arrays;
import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * What a segment of an alignment is a piece of, by the length along it (ISO 16739-1:2024,
 * IfcCurveSegment). File units and radians.
 */
sealed interface ParentCurve {
  /** A place beside where one started, seen along the way one started in, and the turn since. */
  record Reached(Vec2 place, double turn) {}

  /**
   * From a length along the curve some way on.
   *
   * @param against whether the way on is against the curve: it still goes ahead, and bends the
   *     other way
   */
  Reached reached(double start, double along, boolean against);

  /**
   * A line, arc or spiral: its curvature is a polynomial of the length along it.
   *
   * @param curvature coefficients, the constant first
   */
  record Bent(List<Double> curvature) implements ParentCurve {
    /** Radians between the places at which the direction is summed up; Simpson's rule between. */
    private static final double STEP = 0.02;

    /** Radians: more than three turns in one segment come of a unit that was lost. */
    private static final double MOST_TURN = 20;

    private double heading(double s) {
      double sum = 0;
      for (int i = curvature.size() - 1; i >= 0; i--) {
        sum = (sum + curvature.get(i) / (i + 1)) * s;
      }
      return sum;
    }

    @Override
    public Reached reached(double start, double along, boolean against) {
      double sign = against ? -1 : 1;
      double most = 0;
      for (int i = 1; i <= 4; i++) {
        most = Math.max(most, Math.abs(turned(start, sign * along * i / 4)));
      }
      if (!(most <= MOST_TURN)) {
        throw new IllegalArgumentException(
            "a segment of "
                + along
                + " m turns by "
                + most
                + " radians; more than "
                + MOST_TURN
                + " are not followed");
      }
      int steps = 2 * (int) (1 + Math.ceil(most / STEP));
      double x = 0;
      double y = 0;
      for (int i = 0; i <= steps; i++) {
        double weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
        double angle = turned(start, sign * along * i / steps);
        x += weight * Math.cos(angle);
        y += weight * Math.sin(angle);
      }
      double third = along / steps / 3;
      return new Reached(new Vec2(x * third, y * third), turned(start, sign * along));
    }

    private double turned(double start, double along) {
      return heading(start + along) - heading(start);
    }
  }

  /**
   * A polynomial curve in a plane: both coordinates are polynomials of a parameter that is nought
   * where lengths begin. The parabola of a vertical curve is one.
   *
   * @param x coefficients, the constant first (likewise y)
   */
  record Polynomial(List<Double> x, List<Double> y) implements ParentCurve {
    /** Intervals of Simpson's rule: a vertical curve's speed is nearly even. */
    private static final int INTERVALS = 64;

    private static final int NEWTON_STEPS = 12;

    static Polynomial of(StepInstance curve) {
      if (curve.list(3).stream().anyMatch(c -> isNotZero(curve, c))) {
        throw Unreadable.unsupported(curve, " that leaves its plane");
      }
      Polynomial read = new Polynomial(coefficients(curve, 1), coefficients(curve, 2));
      if (!(read.speed(0) > 0)) {
        throw Unreadable.degenerate(curve, "it stands still where it begins");
      }
      return read;
    }

    private static List<Double> coefficients(StepInstance curve, int attribute) {
      return Arrays.stream(curve.numbers(attribute)).boxed().toList();
    }

    private static boolean isNotZero(StepInstance curve, StepValue c) {
      StepValue plain = c instanceof StepValue.Typed t ? t.value() : c;
      if (plain instanceof StepValue.Numeral n) {
        return n.value() != 0;
      }
      throw curve.error("a coefficient is " + c.words());
    }

    @Override
    public Reached reached(double start, double along, boolean against) {
      if (against) {
        throw new IllegalArgumentException("a polynomial curve is run against");
      }
      double from = parameter(start);
      double to = parameter(start + along);
      double first = heading(from);
      double dx = value(x, to) - value(x, from);
      double dy = value(y, to) - value(y, from);
      double cosine = Math.cos(first);
      double sine = Math.sin(first);
      return new Reached(
          new Vec2(cosine * dx + sine * dy, cosine * dy - sine * dx), heading(to) - first);
    }

    /** Where the length from nought is reached: Newton's steps, since the speed is its slope. */
    private double parameter(double length) {
      double u = length / speed(0);
      for (int i = 0; i < NEWTON_STEPS; i++) {
        double speed = speed(u);
        if (!(speed > 0)) {
          throw new IllegalArgumentException("a polynomial curve stands still");
        }
        u += (length - length(u)) / speed;
      }
      return u;
    }

    private double length(double u) {
      double sum = 0;
      for (int i = 0; i <= INTERVALS; i++) {
        double weight = i == 0 || i == INTERVALS ? 1 : i % 2 == 1 ? 4 : 2;
        sum += weight * speed(u * i / INTERVALS);
      }
      return sum * u / INTERVALS / 3;
    }

    private double speed(double u) {
      return Math.hypot(slope(x, u), slope(y, u));
    }

    private double heading(double u) {
      return Math.atan2(slope(y, u), slope(x, u));
    }

    private static double value(List<Double> coefficients, double u) {
      double sum = 0;
      for (int i = coefficients.size() - 1; i >= 0; i--) {
        sum = sum * u + coefficients.get(i);
      }
      return sum;
    }

    private static double slope(List<Double> coefficients, double u) {
      double sum = 0;
      for (int i = coefficients.size() - 1; i >= 1; i--) {
        sum = sum * u + i * coefficients.get(i);
      }
      return sum;
    }
  }
}
