package org.underlee.drainage.flow;

/**
 * The still water in a gutter whose outlets are all blocked, in SI. It spills where the rim is
 * lowest: at the low end, or at an overflow.
 *
 * @param spillsAt metres from the gutter's start
 * @param deepest water over the bottom at the low end
 * @param volume cubic metres
 */
public record BlockedPool(double spillsAt, double deepest, double volume) {
  /** Kilograms per cubic metre. */
  static final double WATER = 1000;

  private static final int PARTS = 1000;

  /** A gutter that spills over its rim. */
  public static BlockedPool of(GutterRun run) {
    double lowEnd = run.fall() >= 0 ? run.length() : 0;
    return to(run, lowEnd, run.section().depth());
  }

  /**
   * A gutter with an overflow.
   *
   * @param at where it is, metres from the gutter's start
   * @param sill metres over the gutter's bottom there
   */
  public static BlockedPool withOverflow(GutterRun run, double at, double sill) {
    double lowEnd = run.fall() >= 0 ? run.length() : 0;
    double level = sill + Math.abs(run.fall()) * Math.abs(at - lowEnd);
    return level < run.section().depth() ? to(run, at, level) : of(run);
  }

  /** Simpson's rule over the wet length. */
  private static BlockedPool to(GutterRun run, double at, double deepest) {
    double fall = Math.abs(run.fall());
    double wet = fall == 0 ? run.length() : Math.min(run.length(), deepest / fall);
    double sum = 0;
    for (int i = 0; i <= PARTS; i++) {
      double depth = Math.max(0, deepest - fall * wet * i / PARTS);
      int weight = i == 0 || i == PARTS ? 1 : i % 2 == 0 ? 2 : 4;
      sum += weight * run.section().area(depth);
    }
    return new BlockedPool(at, deepest, sum * wet / PARTS / 3);
  }

  public double kilograms() {
    return WATER * volume;
  }
}
