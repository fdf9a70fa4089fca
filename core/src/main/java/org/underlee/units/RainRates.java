package org.underlee.units;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How hard it rains, at the edge of the program: metres per second inside. */
public final class RainRates {
  private static final double HOUR = 3600;

  public static final double MM_PER_HOUR = Lengths.MM / HOUR;
  public static final double INCH_PER_HOUR = Lengths.INCH / HOUR;

  private static final Pattern RATE =
      Pattern.compile("(\\d+(?:\\.\\d+)?) ?(mm|in)/h", Pattern.CASE_INSENSITIVE);

  private RainRates() {}

  /** Reads {@code 8 in/h} or {@code 150 mm/h}; empty when it is neither or not more than zero. */
  public static OptionalDouble parse(String text) {
    Matcher rate = RATE.matcher(text.strip());
    if (!rate.matches() || Double.parseDouble(rate.group(1)) == 0) {
      return OptionalDouble.empty();
    }
    double unit = rate.group(2).equalsIgnoreCase("mm") ? MM_PER_HOUR : INCH_PER_HOUR;
    return OptionalDouble.of(Double.parseDouble(rate.group(1)) * unit);
  }
}
