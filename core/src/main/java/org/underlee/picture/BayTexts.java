package org.underlee.picture;

import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;

/**
 * Where the texts of a bay stand in plan, as shares of its length: not on what crosses it, where
 * there is another place.
 *
 * @param tag its name
 * @param width its clear width
 * @param arrowFrom where the arrow of its fall begins, and {@code arrowTo} ends
 */
record BayTexts(double tag, double width, double arrowFrom, double arrowTo) {
  /** Shares at which each may stand, the usual one first. */
  private static final List<Double> TAG_AT = List.of(0.09, 0.14, 0.05);

  /** Past arrow and fall, which then stand higher. */
  private static final double LOW_WIDTH = 0.8;

  /** Nearer to the high end than usual, where its name makes room. */
  private static final double HIGH_WIDTH = 0.2;

  private static final double HIGH_TAG = 0.05;

  private static final List<Double> WIDTH_AT = List.of(0.26, 0.34, 0.4);
  private static final List<Double> ELSE_WIDTH_AT = List.of(LOW_WIDTH, 0.18);
  private static final List<Double> FALL_AT = List.of(0.7, 0.76, 0.84, 0.66);
  private static final List<Double> FALL_AT_HIGHER = List.of(0.57, 0.62, 0.7);
  private static final double ARROW_FROM = 0.42;
  private static final double ARROW_TO = 0.6;
  private static final double ARROW_HIGHER = 0.08;

  /** The arrow is no shorter than this. */
  private static final double ARROW = 0.08;

  /** Half of what a letter takes along a bay on a sheet at 1:50, metres. */
  private static final double LETTER = 0.044;

  /** Half the height of a name in its frame. */
  private static final double NAME = 0.03;

  /** Free on each side, metres. */
  private static final double GAP = 0.02;

  static BayTexts of(Bay bay, String widthText) {
    double room = along(bay, widthText);
    Optional<Double> usual = firstClear(bay, WIDTH_AT, room);
    if (usual.isEmpty() && isHighClear(bay, room)) {
      return new BayTexts(HIGH_TAG, HIGH_WIDTH, ARROW_FROM, ARROW_TO);
    }
    double tag = clear(bay, TAG_AT, NAME);
    double width = usual.or(() -> firstClear(bay, ELSE_WIDTH_AT, room)).orElse(WIDTH_AT.get(0));
    if (width == LOW_WIDTH) {
      return new BayTexts(tag, width, ARROW_FROM - ARROW_HIGHER, ARROW_TO - 2 * ARROW_HIGHER);
    }
    double from = Math.max(ARROW_FROM, width + room);
    return new BayTexts(tag, width, Math.min(from, ARROW_TO - ARROW), ARROW_TO);
  }

  /** Where the words of the fall stand. */
  double fall(Bay bay, String words) {
    return clear(bay, width == LOW_WIDTH ? FALL_AT_HIGHER : FALL_AT, along(bay, words));
  }

  private static double along(Bay bay, String text) {
    return (text.length() * LETTER + GAP) / bay.length();
  }

  /** The first place that is clear; where none is, the usual one. */
  private static double clear(Bay bay, List<Double> places, double room) {
    return firstClear(bay, places, room).orElse(places.get(0));
  }

  private static Optional<Double> firstClear(Bay bay, List<Double> places, double room) {
    return places.stream().filter(at -> isClear(bay, at, room)).findFirst();
  }

  private static boolean isHighClear(Bay bay, double room) {
    return HIGH_WIDTH - room >= HIGH_TAG + NAME
        && isClear(bay, HIGH_WIDTH, room)
        && isClear(bay, HIGH_TAG, NAME);
  }

  private static boolean isClear(Bay bay, double at, double room) {
    double from = bay.stretch().from() + (at - room) * bay.length();
    double to = bay.stretch().from() + (at + room) * bay.length();
    return bay.crossings().stream()
        .noneMatch(c -> c.stretch().from() < to && c.stretch().to() > from);
  }
}
