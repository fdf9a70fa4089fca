package org.underlee.drainage.flow;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/** All water that has come in between a gutter's start and a place: straight between corners. */
final class InflowLine {
  private final double[] corners;
  private final double[] sums;

  InflowLine(double length, List<Inflow> inflows) {
    corners =
        DoubleStream.concat(
                DoubleStream.of(0, length),
                inflows.stream().flatMapToDouble(i -> DoubleStream.of(i.from(), i.to())))
            .map(x -> Math.min(length, Math.max(0, x)))
            .sorted()
            .distinct()
            .toArray();
    sums = new double[corners.length];
    for (int k = 0; k < corners.length; k++) {
      double x = corners[k];
      sums[k] = inflows.stream().mapToDouble(i -> before(i, x)).sum();
    }
  }

  private static double before(Inflow in, double x) {
    double share = (x - in.from()) / (in.to() - in.from());
    return in.flow() * Math.min(1, Math.max(0, share));
  }

  double[] corners() {
    return corners.clone();
  }

  double upTo(double x) {
    int found = Arrays.binarySearch(corners, x);
    if (found >= 0) {
      return sums[found];
    }
    int above = Math.min(corners.length - 1, Math.max(1, -found - 1));
    double part = (x - corners[above - 1]) / (corners[above] - corners[above - 1]);
    return sums[above - 1] + part * (sums[above] - sums[above - 1]);
  }
}
