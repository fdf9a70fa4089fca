package org.underlee.run;

import java.util.List;
import java.util.stream.Stream;
import org.underlee.check.Checks;
import org.underlee.drainage.DrainageRules;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.FramingRules;
import org.underlee.ids.IdsRules;
import org.underlee.ifc.IfcRules;
import org.underlee.layout.LayoutRules;
import org.underlee.schema.SchemaRules;
import org.underlee.step.StepRules;

/** Every rule that a finding may be an instance of. */
public final class Rules {
  static final Rule EDITED =
      new Rule(
          "edited-around-assembly",
          Level.NOTE,
          Rule.OWN,
          "The model was changed after an assembly was written into it; the changes are kept.");

  static final Rule NOT_MEASURED =
      new Rule(
          "not-measured",
          Level.WARNING,
          Rule.OWN,
          "The shapes of some elements cannot be read; if one is a joist or a pipe, the result lacks it.");

  static final Rule SERVICES_ELSEWHERE =
      new Rule(
          "services-elsewhere",
          Level.WARNING,
          Rule.OWN,
          "A model of services has nothing anywhere near a deck, so its origin or unit may be wrong.");

  static final Rule SERVICES_MOVED =
      new Rule(
          "services-moved",
          Level.NOTE,
          Rule.OWN,
          "A model of services has another origin than the deck's and was moved to where it belongs.");

  static final Rule SERVICES_OTHER_PLACE =
      new Rule(
          "services-other-place",
          Level.WARNING,
          Rule.OWN,
          "The sites of a model of services and of the deck's are far apart on Earth by the latitude"
              + " and longitude that they state.");
  static final Rule SERVICES_OTHER_MAP =
      new Rule(
          "services-other-map",
          Level.WARNING,
          Rule.OWN,
          "A model of services is on another map than the deck's, so the maps cannot place it.");

  static final Rule CHECKS_LEFT_OUT =
      new Rule(
          "design-checks-left-out",
          Level.NOTE,
          Rule.OWN,
          "Where the water goes was proved, but the other checks of a design were not made: what the"
              + " parts are for is not known.");

  static final Rule BOTH_WAYS_AT_HOUSE =
      new Rule(
          "both-ways-at-house",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": high at the house, no fall back to it",
          "A field was asked to fall both ways, but one of its ends is at the house.");

  static final Rule NO_HIGH_LINE =
      new Rule(
          "no-high-line",
          Level.WARNING,
          Rule.OWN,
          "A field was asked to fall both ways, but no line across its joists is free for pans' heads.");

  static final Rule HIGH_LINE_NOT_THERE =
      new Rule(
          "high-line-not-there",
          Level.ERROR,
          Rule.OWN,
          "A field's high line was asked for at a place where something stands in the way, or that"
              + " leaves too short a run to one of its ends.");

  private Rules() {}

  /** In the order in which a run comes to them. */
  public static List<Rule> all() {
    return Stream.of(
            StepRules.all(),
            IfcRules.all(),
            List.of(
                EDITED,
                CHECKS_LEFT_OUT,
                NOT_MEASURED,
                SERVICES_ELSEWHERE,
                SERVICES_MOVED,
                SERVICES_OTHER_MAP,
                SERVICES_OTHER_PLACE),
            FramingRules.all(),
            List.of(BOTH_WAYS_AT_HOUSE, NO_HIGH_LINE, HIGH_LINE_NOT_THERE),
            LayoutRules.all(),
            Checks.rules(),
            DrainageRules.all(),
            SchemaRules.all(),
            IdsRules.all())
        .flatMap(List::stream)
        .toList();
  }
}
