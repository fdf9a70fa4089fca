package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.Block;
import org.underlee.bay.Crossing;
import org.underlee.bay.Way;
import org.underlee.geom.Interval;
import org.underlee.units.Lengths;

/**
 * Something in a bay that the pan must pass under or over: blocking, bridging, or a crossing that
 * does not go through the pan.
 *
 * @param stretch the stations it takes, in the field's frame; likewise its heights
 * @param what for people
 */
record Obstacle(Interval stretch, Interval heights, String what) {

  /** What stands in the way of a run; what lies beyond its low end does not. */
  static List<Obstacle> in(BayRun run) {
    List<Obstacle> found = new ArrayList<>();
    for (Block block : run.bay().blocking()) {
      found.add(
          new Obstacle(
              block.stretch(), block.heights(), "blocking at " + Lengths.millimetres(block.at())));
    }
    for (Block strut : run.bay().bridging()) {
      found.add(
          new Obstacle(
              strut.stretch(), strut.heights(), "bridging at " + Lengths.millimetres(strut.at())));
    }
    for (Crossing c : run.bay().crossings()) {
      if (c.way() != Way.THROUGH) {
        String what =
            c.element().ifcClass()
                + " #"
                + c.element().instance()
                + " at "
                + Lengths.millimetres(c.at());
        found.add(new Obstacle(c.stretch(), c.heights(), what));
      }
    }
    found.removeIf(o -> o.stretch.from() >= run.railEnd());
    return found;
  }
}
