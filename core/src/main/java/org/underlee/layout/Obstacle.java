package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.bay.Crossing;
import org.underlee.bay.Way;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
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

  /**
   * Free width between the face of a bay's joist and this, where it comes nearest; below zero where
   * it reaches past the face.
   */
  double beside(Bay bay, RailSide side) {
    Linear face = side.face(bay);
    double from = face.at(stretch.from());
    double to = face.at(stretch.to());
    return side == RailSide.LEFT
        ? across.from() - Math.max(from, to)
        : Math.min(from, to) - across.to();
  }

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
