package org.underlee.geom;

import java.util.Arrays;

/**
 * A value over a station, straight from knot to knot and on beyond the outer knots: the face of a
 * joist in plan, or its underside.
 */
public final class Profile {
  /** Knots nearer than this to the straight line past them say nothing: a fiftieth of a mm. */
  private static final double STRAIGHT = 0.00002;

  private final double[] stations;
  private final double[] values;

  private Profile(double[] stations, double[] values) {
    this.stations = stations;
    this.values = values;
  }

  /**
   * A profile through the given values.
   *
   * @param stations at least one, increasing
   */
  public static Profile of(double[] stations, double[] values) {
    if (stations.length == 0 || stations.length != values.length) {
      throw new IllegalArgumentException(
          "a profile needs a value for each of its stations, got "
              + values.length
              + " for "
              + stations.length);
    }
    int last = stations.length - 1;
    Profile chord =
        new Profile(
            new double[] {stations[0], stations[last]}, new double[] {values[0], values[last]});
    for (int i = 1; i < last; i++) {
      if (Math.abs(chord.at(stations[i]) - values[i]) > STRAIGHT) {
        return new Profile(stations.clone(), values.clone());
      }
    }
    return last == 0 ? new Profile(stations.clone(), values.clone()) : chord;
  }

  public static Profile straight(Linear line) {
    return new Profile(new double[] {0, 1}, new double[] {line.at(0), line.at(1)});
  }

  public double at(double v) {
    int n = stations.length;
    if (n == 1) {
      return values[0];
    }
    int i = 1;
    while (i < n - 1 && v > stations[i]) {
      i++;
    }
    double run = stations[i] - stations[i - 1];
    return values[i - 1] + (values[i] - values[i - 1]) * (v - stations[i - 1]) / run;
  }

  /** Mean slope from the first knot to the last. */
  public double slope() {
    int last = stations.length - 1;
    return last == 0 ? 0 : (values[last] - values[0]) / (stations[last] - stations[0]);
  }

  public boolean isStraight() {
    return stations.length <= 2;
  }

  /** The stations where it bends, within a stretch. */
  public double[] bends(Interval within) {
    return isStraight()
        ? new double[0]
        : Arrays.stream(stations).filter(v -> v > within.from() && v < within.to()).toArray();
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof Profile p
        && Arrays.equals(stations, p.stations)
        && Arrays.equals(values, p.values);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(stations) + Arrays.hashCode(values);
  }

  @Override
  public String toString() {
    return "Profile" + Arrays.toString(stations) + Arrays.toString(values);
  }
}
