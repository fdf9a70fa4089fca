package org.underlee.bay;

import org.underlee.framing.Member;
import org.underlee.geom.Interval;

/**
 * Blocking in a bay.
 *
 * @param stretch the stations it takes, in the field's frame
 * @param heights it spans, in the field's frame
 * @param bottom height of its underside above the joist bottom at its station
 * @param at station of its centre from the high end of the bay
 */
public record Block(Member member, Interval stretch, Interval heights, double bottom, double at) {
  public double thickness() {
    return stretch.length();
  }
}
