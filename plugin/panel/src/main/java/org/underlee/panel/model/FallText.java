package org.underlee.panel.model;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a fall as people write it: {@code 1:96}, {@code 1/8 in per ft}, {@code 1 %}. */
public final class FallText {
  private static final Pattern RATIO = Pattern.compile("1\\s*:\\s*(\\d+(?:\\.\\d+)?)");
  private static final Pattern PER_FOOT =
      Pattern.compile("(\\d+)\\s*/\\s*(\\d+)\\s*(?:in|\")?\\s*(?:per|/)\\s*(?:ft|foot|')");
  private static final Pattern PERCENT = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*%");
  private static final double INCHES_IN_A_FOOT = 12;
  private static final double HUNDRED = 100;
  private static final double STEP = 6;

  /** A run that rounding has moved off a step is still on it. */
  private static final double SAME_STEP = 1e-6;

  private FallText() {}

  /** Run for one unit of fall; empty when the text is no fall. */
  public static OptionalDouble parse(String text) {
    String plain = text.strip();
    Matcher ratio = RATIO.matcher(plain);
    if (ratio.matches()) {
      return positive(Double.parseDouble(ratio.group(1)));
    }
    Matcher perFoot = PER_FOOT.matcher(plain);
    if (perFoot.matches()) {
      return positive(
          INCHES_IN_A_FOOT
              * Double.parseDouble(perFoot.group(2))
              / Double.parseDouble(perFoot.group(1)));
    }
    Matcher percent = PERCENT.matcher(plain);
    return percent.matches()
        ? positive(HUNDRED / Double.parseDouble(percent.group(1)))
        : OptionalDouble.empty();
  }

  /** The next usual run for one unit of fall, a multiple of six: from 1:96 to 1:90 or 1:102. */
  public static double stepped(double runPerFall, boolean steeper) {
    double steps = runPerFall / STEP;
    return STEP * (steeper ? Math.ceil(steps - SAME_STEP) - 1 : Math.floor(steps + SAME_STEP) + 1);
  }

  private static OptionalDouble positive(double run) {
    return run > 0 && Double.isFinite(run) ? OptionalDouble.of(run) : OptionalDouble.empty();
  }
}
