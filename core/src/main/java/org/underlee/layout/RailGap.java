package org.underlee.layout;

import java.util.List;
import org.underlee.geom.Interval;
import org.underlee.layout.Derivation.Measured;

/**
 * What is cut out of the leg.
 *
 * @param obstacle what it makes room for
 * @param stretch along the rail
 * @param height of the leg left below it
 * @param bottom the same in the field's frame, where the notch begins
 */
record RailGap(Obstacle obstacle, Interval stretch, double height, double bottom) {

  Measured measured() {
    return new Measured(List.of(obstacle.element()));
  }
}
