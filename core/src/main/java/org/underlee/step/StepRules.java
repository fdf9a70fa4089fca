package org.underlee.step;

import org.underlee.finding.Level;
import org.underlee.finding.Rule;

/** What is read although the standard forbids it. */
final class StepRules {
  private static final String STANDARD = "ISO 10303-21:2016, ";

  static final Rule BYTE_ORDER_MARK = new Rule("byte-order-mark", Level.NOTE, STANDARD + "5.2");
  static final Rule NO_TRAILER = new Rule("no-trailer", Level.WARNING, STANDARD + "5.3");
  static final Rule AFTER_TRAILER = new Rule("text-after-trailer", Level.WARNING, STANDARD + "5.3");
  static final Rule HEADER_TWICE = new Rule("header-entity-twice", Level.WARNING, STANDARD + "8.2");
  static final Rule SECTION_LEFT_OUT = new Rule("section-left-out", Level.NOTE, Rule.OWN);
  static final Rule RAW_BYTES = new Rule("raw-bytes-in-text", Level.NOTE, STANDARD + "6.4.3");
  static final Rule LONE_BACKSLASH = new Rule("lone-backslash", Level.NOTE, STANDARD + "6.4.3");

  private StepRules() {}
}
