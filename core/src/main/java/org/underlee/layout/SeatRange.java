package org.underlee.layout;

import org.underlee.geom.Interval;
import org.underlee.units.Words;

/**
 * Seat heights at the field's high end that serve a bay.
 *
 * @param heights metres above the joist bottom there
 * @param bay {@code B3}
 * @param bottomWhy what sets the lower end, in words; likewise the upper end
 */
record SeatRange(Interval heights, String bay, Words bottomWhy, Words topWhy) {
  /** Heights nearer than a hundredth of a millimetre are equal. */
  static final double SAME = 1e-5;

  boolean contains(double height) {
    return height >= heights.from() - SAME && height <= heights.to() + SAME;
  }

  /** What sets the upper end, and in which bay. */
  Words binding() {
    return Words.of("%s: %s", bay, topWhy);
  }
}
