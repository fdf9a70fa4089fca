package org.underlee.finding;

import java.util.Optional;

/**
 * One thing the program noticed.
 *
 * @param measure the measured value against its limit, where there are numbers
 * @param fix what a person can do about it
 */
public record Finding(
    Rule rule, String message, Place place, Optional<Measure> measure, Optional<String> fix) {

  /** A measured value beside its limit, both in the named unit. */
  public record Measure(double measured, double limit, String unit) {}

  public static Finding of(Rule rule, Place place, String message, String fix) {
    return new Finding(rule, message, place, Optional.empty(), Optional.of(fix));
  }

  public static Finding measured(
      Rule rule, Place place, String message, Measure measure, String fix) {
    return new Finding(rule, message, place, Optional.of(measure), Optional.of(fix));
  }

  public Level level() {
    return rule.level();
  }
}
