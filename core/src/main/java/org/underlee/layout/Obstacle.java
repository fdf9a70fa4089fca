package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.Block;
import org.underlee.bay.Crossing;
import org.underlee.bay.Way;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Interval;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Something in a bay that the pan must pass under or over: blocking, bridging, or a crossing that
 * does not go through the pan.
 *
 * @param stretch the stations it takes, in the field's frame; likewise its heights
 * @param across the places across the field that it takes; without end for what fills the bay
 * @param words what and where it is, for people
 */
record Obstacle(
    Interval stretch, Interval heights, Interval across, Words words, BuildingElement element) {
  private static final Interval WHOLE_BAY =
      new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** What stands in the way of a run; what lies beyond its low end does not. */
  static List<Obstacle> in(BayRun run) {
    List<Obstacle> found = new ArrayList<>();
    run.bay().blocking().forEach(b -> found.add(of(b, "blocking at %s")));
    run.bay().bridging().forEach(b -> found.add(of(b, "bridging at %s")));
    for (Crossing c : run.bay().crossings()) {
      if (c.way() != Way.THROUGH) {
        Words words =
            Words.of(
                "%s #%s at %s",
                c.element().ifcClass(), c.element().instance(), Quantity.length(c.at()));
        found.add(new Obstacle(c.stretch(), c.heights(), c.acrossStretch(), words, c.element()));
      }
    }
    found.removeIf(o -> o.stretch.from() >= run.railEnd());
    return found;
  }

  private static Obstacle of(Block block, String template) {
    return new Obstacle(
        block.stretch(),
        block.heights(),
        WHOLE_BAY,
        Words.of(template, Quantity.length(block.at())),
        block.member().element());
  }
}
