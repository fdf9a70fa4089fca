package org.underlee.drainage;

import java.util.List;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** The rules whose findings come from following the water. */
public final class DrainageRules {
  static final Rule OPEN_DECK =
      new Rule(
          "open-deck-drips",
          Level.WARNING,
          Rule.OWN,
          "Rain on part of the deck meets no part of an assembly: a bay is open, or the deck goes on"
              + " beyond the gutter.");

  static final Rule LEAK =
      new Rule(
          "joint-leaks",
          Level.ERROR,
          Rule.OWN,
          "Rain that the assembly should catch gets through at a joint, an edge or a gap: the rain of"
              + " 0.5 % of the field or more.");

  static final Rule DRIP =
      new Rule(
          "joint-drips",
          Level.NOTE,
          Rule.OWN,
          "As joint-leaks, but the rain of less than 0.5 % of the field: drops at corners and edges.");

  static final Rule NO_WAY_DOWN =
      new Rule(
          "outlet-leads-nowhere",
          Level.ERROR,
          Rule.OWN,
          "The water of an outlet is not led down to the ground.");

  static final Rule STANDS =
      new Rule(
          "water-stands",
          Level.WARNING,
          Rule.OWN,
          "Water stands in a part with every outlet open, deeper than a film.");

  static final Rule FLAT =
      new Rule(
          "no-fall",
          Level.ERROR,
          Rule.COMMON_PRACTICE,
          "A part that carries water is level, with less than 1 mm of fall in 1 m, or falls to the house.");

  static final Rule BLOCKED =
      new Rule(
          "blocked-outlet-spills",
          Level.NOTE,
          Rule.OWN,
          "What happens when an outlet is blocked: how deep water stands, what it weighs, where it"
              + " runs over.");

  private DrainageRules() {}

  public static List<Rule> all() {
    return List.of(OPEN_DECK, LEAK, DRIP, NO_WAY_DOWN, STANDS, FLAT, BLOCKED);
  }
}
