package org.underlee.writeback;

/**
 * The units that a model's numbers are in.
 *
 * @param metre one unit of length in metres; likewise the others, in SI
 * @param radian one unit of plane angle in radians
 */
record ModelUnits(
    double metre, double squareMetre, double cubicMetre, double kilogram, double radian) {
  /**
   * Coordinates are rounded to this share of a unit: a nanometre at most for metres and feet. It
   * hides the noise of unit conversion, so that equal places are written once.
   */
  private static final double STEPS_PER_UNIT = 1e9;

  /** A length or coordinate as the model writes it. */
  Value length(double metres) {
    return Value.real(rounded(metres / metre));
  }

  Value area(double squareMetres) {
    return Value.real(rounded(squareMetres / squareMetre));
  }

  Value volume(double cubicMetres) {
    return Value.real(rounded(cubicMetres / cubicMetre));
  }

  Value mass(double kilograms) {
    return Value.real(rounded(kilograms / kilogram));
  }

  Value angle(double radians) {
    return Value.real(radians / radian);
  }

  private static double rounded(double value) {
    return Math.rint(value * STEPS_PER_UNIT) / STEPS_PER_UNIT;
  }
}
