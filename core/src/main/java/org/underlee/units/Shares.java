package org.underlee.units;

/** Shares of a whole as they are shown, in percent. */
public final class Shares {
  private static final double WHOLE = 100;

  /** What is short of the whole by less is the whole, as in files with six decimals. */
  private static final double SAME = 5e-7;

  private Shares() {}

  /**
   * The nearest number of percent with some decimals, but never the whole where something is
   * missing: 0.9997 is 99.9 percent with one decimal, since a deck that drips is not wholly dry.
   *
   * @param share of a whole, 0 to 1
   */
  public static double percent(double share, int decimals) {
    double steps = Math.pow(10, decimals);
    double nearest = Math.rint(WHOLE * share * steps) / steps;
    return nearest < WHOLE || share >= 1 - SAME ? nearest : WHOLE - 1 / steps;
  }
}
