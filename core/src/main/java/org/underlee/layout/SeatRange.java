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

  /** The one height that the user asks for. */
  static SeatRange wished(double height) {
    Words you = Words.of("set by you with --seat");
    return new SeatRange(new Interval(height, height), "", you, you);
  }

  boolean contains(double height) {
    return height >= heights.from() - SAME && height <= heights.to() + SAME;
  }

  /** What sets the upper end, and in which bay. */
  Words binding() {
    return bay.isEmpty() ? topWhy : Words.of("%s: %s", bay, topWhy);
  }
}
