package org.underlee.layout;

import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** The rules whose findings come from laying out an assembly. */
final class LayoutRules {
  static final Rule BAY_TOO_WIDE = new Rule("bay-too-wide", Level.ERROR, Rule.COMMON_PRACTICE);
  static final Rule BAY_TOO_NARROW = new Rule("bay-too-narrow", Level.ERROR, Rule.COMMON_PRACTICE);
  static final Rule RUN_TOO_SHORT = new Rule("run-too-short", Level.ERROR, Rule.OWN);
  static final Rule NO_SEAT = new Rule("no-seat-height", Level.ERROR, Rule.OWN);
  static final Rule PIPE_AT_EDGE = new Rule("pipe-at-pan-edge", Level.ERROR, Rule.OWN);
  static final Rule NO_POST = new Rule("no-post-for-downspout", Level.WARNING, Rule.OWN);
  static final Rule HEADROOM = new Rule("headroom", Level.WARNING, Rule.COMMON_PRACTICE);
  static final Rule INSIDE_FLOOR = new Rule("inside-floor-left-out", Level.NOTE, Rule.OWN);
  static final Rule BEYOND_BEAM = new Rule("open-beyond-the-beam", Level.WARNING, Rule.OWN);
  static final Rule FIELD_EMPTY = new Rule("field-not-served", Level.ERROR, Rule.OWN);

  private LayoutRules() {}
}
