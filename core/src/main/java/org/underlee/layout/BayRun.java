package org.underlee.layout;

import static org.underlee.kit.DrainValue.HEAD_GAP;
import static org.underlee.kit.PanValue.PAN_DRIP_SETBACK;
import static org.underlee.kit.PanValue.RAIL_END_GAP;

import org.underlee.bay.Bay;
import org.underlee.kit.Kit;

/**
 * One bay with its low-end line: the stations at which rails and pans start and stop. Lengths are
 * along the slope, so that a part's length is what is cut; stations are level.
 *
 * @param lowFace station of the face that the low-end line follows
 */
record BayRun(Bay bay, double lowFace, Kit kit) {
  /** The clear run: from the face that bounds the high end to the low-end line. */
  double run() {
    return lowFace - bay.stretch().from();
  }

  double start() {
    return bay.stretch().from() + kit.get(HEAD_GAP);
  }

  double railLength() {
    return run() - kit.get(RAIL_END_GAP);
  }

  double panLength() {
    return railLength() - kit.get(PAN_DRIP_SETBACK);
  }

  double railEnd() {
    return stationAt(railLength());
  }

  double panEnd() {
    return stationAt(panLength());
  }

  /** The level station of a place that lies {@code along} metres down the slope from the start. */
  double stationAt(double along) {
    return start() + along * cosine();
  }

  double alongTo(double station) {
    return (station - start()) / cosine();
  }

  private double cosine() {
    return 1 / Math.hypot(1, kit.fall());
  }
}
