package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;

/** A cross-section, centred; {@code width} is across the member, {@code depth} is its height. */
public sealed interface Section {
  double width();

  double depth();

  /** Exact, in square millimetres. */
  double area();

  /** Corners in (across, up), counter-clockwise seen against the axis. */
  List<double[]> outline();

  /** Sawn wood, a steel box, a wall. */
  record Rectangle(double width, double depth) implements Section {
    @Override
    public double area() {
      return width * depth;
    }

    @Override
    public List<double[]> outline() {
      double a = width / 2;
      double b = depth / 2;
      return List.of(
          new double[] {-a, -b}, new double[] {a, -b}, new double[] {a, b}, new double[] {-a, b});
    }
  }

  /** A rolled I without its fillets. */
  record IShape(double width, double depth, double web, double flange) implements Section {
    @Override
    public double area() {
      return 2 * width * flange + (depth - 2 * flange) * web;
    }

    @Override
    public List<double[]> outline() {
      double a = width / 2;
      double b = depth / 2;
      double w = web / 2;
      double f = b - flange;
      double[][] corners = {
        {-a, -b}, {a, -b}, {a, -f}, {w, -f}, {w, f}, {a, f},
        {a, b}, {-a, b}, {-a, f}, {-w, f}, {-w, -f}, {-a, -f}
      };
      return List.of(corners);
    }
  }

  /** A pipe, taken as solid. As a mesh it is a polygon with {@link #SIDES} sides inside it. */
  record Round(double diameter) implements Section {
    /** The polygon's area is 1.1 % less than the circle's. */
    private static final int SIDES = 24;

    @Override
    public double width() {
      return diameter;
    }

    @Override
    public double depth() {
      return diameter;
    }

    @Override
    public double area() {
      return Math.PI * diameter * diameter / 4;
    }

    @Override
    public List<double[]> outline() {
      List<double[]> corners = new ArrayList<>();
      for (int i = 0; i < SIDES; i++) {
        double angle = 2 * Math.PI * i / SIDES;
        corners.add(
            new double[] {
              diameter / 2 * StrictMath.cos(angle), diameter / 2 * StrictMath.sin(angle)
            });
      }
      return List.copyOf(corners);
    }
  }
}
