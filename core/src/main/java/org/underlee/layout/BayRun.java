package org.underlee.layout;

import org.underlee.bay.Bay;
import org.underlee.framing.Field;
import org.underlee.framing.Role;
import org.underlee.kit.Kit;

/**
 * One bay with its low-end line: the stations at which what is hung there starts and stops. Lengths
 * are along the slope, so that a part's length is what is cut; stations are level.
 *
 * @param lowFace station of the face that the low-end line follows
 */
record BayRun(Bay bay, double lowFace, Kit kit) {
  /** The clear run: from the face that bounds the high end to the low-end line. */
  double run() {
    return lowFace - bay.stretch().from();
  }

  /** Whether its joists run on beyond a high line, with or without blocking on the line. */
  boolean beginsAtHighLine(Field field) {
    return field.highLine().isPresent()
        && bay.high().map(h -> h.role() == Role.BLOCKING).orElse(true);
  }

  /** Where what covers the joists begins: at the high line, blocking on it or not. */
  double joistStart(Field field) {
    return beginsAtHighLine(field) ? 0 : bay.stretch().from();
  }

  /** Where the pan's head is. */
  double start() {
    return bay.stretch().from() + Ends.of(kit).head();
  }

  /** Rails and strips begin at the face itself, or a joist's water would run past their ends. */
  double railStart() {
    return bay.stretch().from();
  }

  double railLength() {
    return run() - Ends.of(kit).rail();
  }

  double panLength() {
    return railLength() - Ends.of(kit).setback();
  }

  double railEnd() {
    return railStart() + railLength() * cosine();
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
