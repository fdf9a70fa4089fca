package org.underlee.check;

import java.util.List;
import java.util.OptionalDouble;
import org.underlee.drainage.flow.GutterSection;
import org.underlee.drainage.flow.Sizing;
import org.underlee.geom.Interval;
import org.underlee.kit.DrainValue;
import org.underlee.layout.Ground;
import org.underlee.layout.GutterCapacity;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * What would carry the rain where a kit's gutter does not, in the height that is left: no number of
 * outlets helped then, as the layout has tried them all.
 */
record LargerGutter(Assembled field, GutterInRain rain) {
  /**
   * Names the smallest of the common sizes that carries it.
   *
   * @param stretch of gutter that runs over, and what drips into it
   */
  Words advice(Interval stretch, List<GutterCapacity.Share> shares) {
    Sizing.Answer answer = rain.smallest(stretch, shares, room());
    if (!answer.passes()) {
      return Words.of(
          "Let a second gutter or another low end take a part of the water: of the common sizes"
              + " that leave %s of headroom, none carries it.",
          Quantity.length(Limits.HEADROOM));
    }
    GutterSection gutter = answer.choice().gutter();
    return Words.of(
        "Use a kit with at least this, the smallest common set that carries it here: a gutter %s"
            + " wide and %s deep, with %s of %s, for a stretch of %s.",
        Quantity.length(gutter.rimWidth()),
        Quantity.length(gutter.depth()),
        answer.choice().outlets() == 1 ? "one downspout" : "a downspout at each end",
        Quantity.length(answer.choice().downspout().equalDiameter()),
        Quantity.length(stretch.length()));
  }

  /** The gutter's own depth, and what is left below it until it hangs too low to walk under. */
  private double room() {
    OptionalDouble below = Ground.headroom(field.layout(), field.field());
    double own = field.kit().get(DrainValue.GUTTER_DEPTH);
    return Math.max(own, own + below.orElse(Limits.HEADROOM) - Limits.HEADROOM);
  }
}
