package org.underlee.writeback;

import java.util.OptionalDouble;

/**
 * The units that a model's numbers are in.
 *
 * @param metre one unit of length in metres
 * @param radian one unit of plane angle in radians
 * @param squareMetre one unit of area in square metres, where the project assigns one whose size is
 *     certain; likewise volume and mass. Where it does not, a quantity of ours names its own unit.
 */
record ModelUnits(
    double metre,
    double radian,
    OptionalDouble squareMetre,
    OptionalDouble cubicMetre,
    OptionalDouble kilogram) {
  /**
   * Coordinates and quantities are rounded to this share of a unit: a nanometre at most for metres
   * and feet. It hides the noise of unit conversion, so that equal places are written once.
   */
  private static final double STEPS_PER_UNIT = 1e9;

  /** A length or coordinate as the model writes it. */
  Value length(double metres) {
    return rounded(metres / metre);
  }

  Value angle(double radians) {
    return Value.real(radians / radian);
  }

  static Value rounded(double value) {
    return Value.real(Math.rint(value * STEPS_PER_UNIT) / STEPS_PER_UNIT);
  }
}
