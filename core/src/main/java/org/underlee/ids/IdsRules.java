package org.underlee.ids;

import java.util.List;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** How a model can fall short of an Information Delivery Specification. */
public final class IdsRules {
  private static final String IDS = "IDS 1.0";

  static final Rule REQUIREMENT =
      new Rule(
          "ids-requirement",
          Level.ERROR,
          IDS,
          "Elements that a specification is about lack what it asks of them.");

  static final Rule COUNT =
      new Rule(
          "ids-count",
          Level.ERROR,
          IDS,
          "The model has fewer or more elements of a kind than a specification allows.");

  static final Rule OTHER_VERSION =
      new Rule(
          "ids-other-version",
          Level.NOTE,
          IDS,
          "A specification is for other versions of IFC than the model's, and was not checked.");

  private IdsRules() {}

  public static List<Rule> all() {
    return List.of(REQUIREMENT, COUNT, OTHER_VERSION);
  }
}
