package org.underlee.layout;

import org.underlee.geom.Interval;

/**
 * Seat heights at the field's high end that serve a bay.
 *
 * @param heights metres above the joist bottom there
 * @param bottomWhy what sets the lower end, in words; likewise the upper end
 */
record SeatRange(Interval heights, String bottomWhy, String topWhy) {
  /** Heights nearer than a hundredth of a millimetre are equal. */
  static final double SAME = 1e-5;

  boolean contains(double height) {
    return height >= heights.from() - SAME && height <= heights.to() + SAME;
  }
}
