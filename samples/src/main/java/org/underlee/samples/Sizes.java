package org.underlee.samples;

/** Sizes as the trade says them, and inches. */
final class Sizes {
  static final double INCH = 25.4;
  static final double FOOT = 12 * INCH;

  private Sizes() {}

  static double inches(double inches) {
    return inches * INCH;
  }

  /** A section given in inches. */
  static Section.Rectangle sawn(double width, double depth) {
    return new Section.Rectangle(inches(width), inches(depth));
  }

  static Section.Rectangle metric(double width, double depth) {
    return new Section.Rectangle(width, depth);
  }

  static String round(double diameter) {
    return "Ø " + Math.round(diameter);
  }
}
