package org.underlee.framing;

import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** The rules whose findings come from recognising the framing. */
final class FramingRules {
  static final Rule NO_JOISTS = new Rule("no-joists", Level.WARNING, Rule.OWN);
  static final Rule FALL_ASSUMED = new Rule("fall-direction-assumed", Level.WARNING, Rule.OWN);

  private FramingRules() {}
}
