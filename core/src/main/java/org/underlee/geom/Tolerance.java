package org.underlee.geom;

/**
 * How near is near, with a name for each meaning. All lengths are metres.
 *
 * @param same two measured places that are one: half of the 0.1 mm that results are given to, and
 *     never less than what a double can hold at the model's distance from the origin
 * @param touch surfaces that bear on each other in a model drawn by hand: gaps and overlaps up to
 *     this are contact (common practice: drawing and sawing accuracy)
 * @param plyGap the widest gap between plies that still act as one joist line (design, section 1)
 * @param parallelRadians how far two directions may differ and be called parallel
 */
public record Tolerance(double same, double touch, double plyGap, double parallelRadians) {
  /**
   * Share of a coordinate's size below which a difference is noise: 2⁻⁴⁰, 4,096 times a double's
   * step.
   */
  private static final double NOISE = 0x1p-40;

  /** The tolerances for coordinates up to {@code magnitude} metres from the origin. */
  public static Tolerance forCoordinates(double magnitude) {
    double noise = noise(magnitude);
    return new Tolerance(
        Math.max(0.00005, noise), Math.max(0.006, noise), Math.max(0.006, noise), 0.01);
  }

  /**
   * What is rounding of coordinates up to {@code magnitude} metres from the origin: a triangle that
   * is no higher has no direction of its own.
   */
  public static double noise(double magnitude) {
    return magnitude * NOISE;
  }

  /** Whether plies with this gap, or overlap, act as one: the widest gap itself still does. */
  public boolean areOneLine(double gap) {
    return Math.abs(gap) <= plyGap + same;
  }
}
