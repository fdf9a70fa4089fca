package org.underlee.framing;

import java.util.List;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** The rules whose findings come from recognising the framing. */
public final class FramingRules {
  static final Rule NO_JOISTS =
      new Rule(
          "no-joists",
          Level.WARNING,
          Rule.OWN,
          "Nothing in the model looks like three joists side by side, so there is no deck to drain.");

  static final Rule FALL_ASSUMED =
      new Rule(
          "fall-direction-assumed",
          Level.WARNING,
          Rule.OWN,
          "Nothing tells which end of the joists is the house side; water might be led to the house.");

  static final Rule WIDE_GAP =
      new Rule(
          "gap-without-bay",
          Level.WARNING,
          Rule.OWN,
          "Joists on the same supports stand too far apart for a bay: an opening, or a joist is missing.");

  static final Rule ASSUMED =
      new Rule(
          "framing-assumed",
          Level.WARNING,
          Rule.OWN,
          "The model has a slab only; joists were assumed as the user said, so quantities are estimates.");

  static final Rule SPACED_PAIR =
      new Rule(
          "spaced-pair",
          Level.NOTE,
          Rule.OWN,
          "Two joists stand a little apart as a pair; the gap between them is a narrow bay.");

  static final Rule OVERRIDE_STALE =
      new Rule(
          "override-stale",
          Level.WARNING,
          Rule.OWN,
          "The overrides file names an element that the model does not have, so what it says is lost.");

  static final Rule OVERRIDE_NOT_FOLLOWED =
      new Rule(
          "override-not-followed",
          Level.WARNING,
          Rule.OWN,
          "What the overrides file says of an element does not fit where the element stands.");

  static final Rule NAME_DISAGREES =
      new Rule(
          "name-disagrees",
          Level.NOTE,
          Rule.OWN,
          "A member is called like one thing and stands where another would; its place was followed.");

  private FramingRules() {}

  public static List<Rule> all() {
    return List.of(
        NO_JOISTS,
        FALL_ASSUMED,
        WIDE_GAP,
        SPACED_PAIR,
        NAME_DISAGREES,
        ASSUMED,
        OVERRIDE_STALE,
        OVERRIDE_NOT_FOLLOWED);
  }
}
