package org.underlee.geom;

/** A straight line given as a value over a station: {@code at(v) = at0 + slope·v}. */
public record Linear(double at0, double slope) {
  /** The line through a value at a station, with a slope. */
  public static Linear through(double station, double value, double slope) {
    return new Linear(value - slope * station, slope);
  }

  public double at(double v) {
    return at0 + slope * v;
  }

  public Linear plus(double by) {
    return new Linear(at0 + by, slope);
  }
}
