package org.underlee.check;

import org.underlee.units.Lengths;

/** Limits that several checks share, with their sources. */
final class Limits {
  /** 1/8 in per ft: what pans should keep, common practice. */
  static final double FALL_ADVISED = 1.0 / 96;

  /** 1/16 in per ft: less lets water stand, common practice; also the least for gutters. */
  static final double FALL_LEAST = 1.0 / 192;

  /** Full live load bends a joist to this share of its span at most: span tables, L/360. */
  static final double LIVE_DEFLECTION = 1.0 / 360;

  /** A walking route's headroom: IRC R311.7.2 for stairs, 6 ft 8 in. */
  static final double HEADROOM = 80 * Lengths.INCH;

  private Limits() {}
}
