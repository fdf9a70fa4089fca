package org.underlee.drainage.flow;

/**
 * What the assembly weighs on the framing, in kilograms over square metres of plan.
 *
 * @param dry of pans, rails, gutters and what holds them
 * @param film of water on wet pans
 * @param standing of water behind blocked outlets and in ponds
 * @param area plan area that carries it
 */
public record WetLoad(double dry, double film, double standing, double area) {
  /** Newtons per kilogram. */
  private static final double WEIGHT = 9.80665;

  /** One pound per square foot in pascals. */
  public static final double PSF = 47.88025898033584;

  public WetLoad {
    if (!(area > 0) || !(dry >= 0) || !(film >= 0) || !(standing >= 0)) {
      throw new IllegalArgumentException(
          "a load of " + dry + ", " + film + ", " + standing + " kg on " + area + " m2 is none");
    }
  }

  /** The kilograms per square metre that press so many pascals. */
  public static double mass(double pascals) {
    return pascals / WEIGHT;
  }

  /** Pascals when it rains and all runs off. */
  public double wet() {
    return WEIGHT * (dry + film) / area;
  }

  /** Pascals when outlets are blocked. */
  public double blocked() {
    return WEIGHT * (dry + film + standing) / area;
  }

  /** What the blocked state leaves of a spare dead load, in pascals; negative when too heavy. */
  public double left(double spare) {
    return spare - blocked();
  }
}
