package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/** How deep two members run into each other, by the separating axis theorem on their hulls. */
final class Overlap {
  private static final double PARALLEL = 1e-9;

  private Overlap() {}

  /** Millimetres; zero or less where they are apart or touch. */
  static double of(Solid a, Solid b) {
    double least = Double.POSITIVE_INFINITY;
    for (Xyz axis : axes(a, b)) {
      double[] one = shadow(a, axis);
      double[] two = shadow(b, axis);
      least = Math.min(least, Math.min(one[1] - two[0], two[1] - one[0]));
    }
    return least;
  }

  private static List<Xyz> axes(Solid a, Solid b) {
    List<Xyz> axes = new ArrayList<>(directions(a));
    axes.addAll(directions(b));
    for (Xyz x : directions(a)) {
      for (Xyz y : directions(b)) {
        Xyz cross = x.cross(y);
        if (cross.dot(cross) > PARALLEL) {
          axes.add(cross.unit());
        }
      }
    }
    return axes;
  }

  private static List<Xyz> directions(Solid s) {
    Frame f = s.frame();
    return List.of(
        f.x(),
        f.y(),
        f.z(),
        f.direction(new Xyz(1, -s.startSkew(), 0)).unit(),
        f.direction(new Xyz(1, -s.endSkew(), 0)).unit());
  }

  private static double[] shadow(Solid s, Xyz axis) {
    DoubleStream along = s.corners().stream().mapToDouble(c -> s.frame().point(c).dot(axis));
    var summary = along.summaryStatistics();
    return new double[] {summary.getMin(), summary.getMax()};
  }
}
