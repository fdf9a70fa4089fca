package org.underlee.check;

import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.drainage.flow.GutterSection;
import org.underlee.drainage.flow.Sizing;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.layout.Ground;
import org.underlee.layout.PartKind;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * What would carry the rain where a kit's gutter does not, in the height that is left: no number of
 * outlets helped then, as the layout has tried them all.
 */
record LargerGutter(GutterInRain rain) {
  /** Names the smallest of the common sizes that carries it. */
  Words advice(Stretch stretch) {
    return smallest(stretch)
        .map(choice -> advice(stretch, choice))
        .orElseGet(
            () ->
                Words.of(
                    "Let a second gutter or another low end take a part of the water: of the common"
                        + " sizes that leave %s of headroom, none carries it.",
                    Quantity.length(Limits.HEADROOM)));
  }

  private static Words advice(Stretch stretch, Sizing.Choice choice) {
    Kit kit = stretch.field().kit();
    GutterSection gutter = choice.gutter();
    return Words.of(
        "The kit's gutter is %s wide and %s deep, with %s here of %s. Use a kit with at least this,"
            + " the smallest common set that carries it here: a gutter %s wide and %s deep, with %s"
            + " of %s, for a stretch of %s.",
        Quantity.length(kit.get(DrainValue.GUTTER_WIDTH)),
        Quantity.length(kit.get(DrainValue.GUTTER_DEPTH)),
        downspouts(stretch.field()),
        Quantity.length(kit.get(DrainValue.DOWNSPOUT_DIAMETER)),
        Quantity.length(gutter.rimWidth()),
        Quantity.length(gutter.depth()),
        choice.outlets() == 1 ? "one downspout" : "a downspout at each end",
        Quantity.length(choice.downspout().equalDiameter()),
        Quantity.length(stretch.along().length()));
  }

  private static Words downspouts(Assembled field) {
    long outlets = field.all(PartKind.OUTLET).count();
    return outlets == 1
        ? Words.plain("one downspout")
        : Words.of("%s downspouts", Quantity.count(outlets));
  }

  /** Empty when none does in the height that is left. */
  Optional<Sizing.Choice> smallest(Stretch stretch) {
    Sizing.Answer answer = rain.smallest(stretch.along(), stretch.shares(), room(stretch.field()));
    return Optional.of(answer).filter(Sizing.Answer::passes).map(Sizing.Answer::choice);
  }

  /** The gutter's own depth, and what is left below it until it hangs too low to walk under. */
  private static double room(Assembled field) {
    OptionalDouble below = Ground.headroom(field.layout(), field.field());
    double own = field.kit().get(DrainValue.GUTTER_DEPTH);
    return Math.max(own, own + below.orElse(Limits.HEADROOM) - Limits.HEADROOM);
  }
}
