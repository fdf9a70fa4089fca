package org.underlee.layout;

import org.underlee.geom.Interval;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * One limit on the seat of a bay, as the open stretch of heights that it forbids.
 *
 * @param forbidden metres at the field's high end; without end where the limit has one side only
 * @param why what sets it
 */
record SeatLimit(Interval forbidden, Words why) {
  static SeatLimit atLeast(double height, String why) {
    return new SeatLimit(new Interval(Double.NEGATIVE_INFINITY, height), Words.plain(why));
  }

  static SeatLimit atMost(double height, String why) {
    return new SeatLimit(new Interval(height, Double.POSITIVE_INFINITY), Words.plain(why));
  }

  boolean isFloor() {
    return forbidden.from() == Double.NEGATIVE_INFINITY;
  }

  boolean isCeiling() {
    return forbidden.to() == Double.POSITIVE_INFINITY;
  }

  /** Whether every height is forbidden from those below this limit's end up to the other's. */
  boolean isMetBy(SeatLimit next) {
    return next.forbidden.from() < forbidden.to() - SeatRange.SAME;
  }

  Words words() {
    Quantity from = Quantity.length(forbidden.from());
    Quantity to = Quantity.length(forbidden.to());
    if (isFloor()) {
      return Words.of("at least %s (%s)", to.atLeast(), why);
    }
    return isCeiling()
        ? Words.of("at most %s (%s)", from.atMost(), why)
        : Words.of("not between %s and %s (%s)", from.atMost(), to.atLeast(), why);
  }
}
