package org.underlee.kit;

import java.util.Set;

/**
 * How an item is sold and cut, by the kit.
 *
 * @param unit what a shop counts it in: {@code box}, {@code roll}, {@code sheet}
 * @param pieces in one such unit: 100 in a box of screws; 1 where a piece or a length is the unit
 * @param spareShare of what is needed that is bought on top, rounded up to whole pieces; of a coil
 *     or roll, of its length
 * @param endTrim cut off each end of a stock length before it is used, metres
 * @param keepOffcut offcuts at least this long are kept, metres; zero where none is
 * @param ripWidth of the sheet that pieces may be ripped from side by side, metres; zero where they
 *     may not
 * @param source where the numbers come from
 */
public record Shop(
    String unit,
    int pieces,
    double spareShare,
    double endTrim,
    double keepOffcut,
    double ripWidth,
    String source) {
  private static final Set<String> UNROLLED = Set.of("coil", "roll");

  /** Sold one by one, with no spare, no trim and nothing kept. */
  public static Shop oneByOne(String unit, String source) {
    return new Shop(unit, 1, 0, 0, 0, 0, source);
  }

  /**
   * Whether it is unrolled and cut where one likes, so that what is spare is a length and not so
   * many pieces: the rest of a coil is as good as a new one.
   */
  public boolean isUnrolled() {
    return UNROLLED.contains(unit);
  }

  public boolean keeps(double offcut) {
    return keepOffcut > 0 && offcut >= keepOffcut;
  }
}
