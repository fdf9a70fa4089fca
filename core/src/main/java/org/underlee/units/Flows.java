package org.underlee.units;

/** Flows of water at the edge of the program: cubic metres per second inside. */
public final class Flows {
  public static final double LITRE_PER_SECOND = 0.001;

  /** One US gallon is 231 cubic inches. */
  private static final double GALLON = 231 * Lengths.INCH * Lengths.INCH * Lengths.INCH;

  /** One US gallon per minute: 1 gpm is exactly 96.25 square feet at 1 in per hour. */
  public static final double GPM = GALLON / 60;

  public static final double CUBIC_FOOT_PER_SECOND = Lengths.FOOT * Lengths.FOOT * Lengths.FOOT;

  private Flows() {}
}
