package org.underlee.units;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.underlee.units.Lengths.UnitSystem;

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

  /** {@code 203 mm/h} or {@code 8.0 in/h}. */
  public static String format(double rate, UnitSystem system) {
    return system == UnitSystem.METRIC
        ? Math.round(rate / MM_PER_HOUR) + " mm/h"
        : String.format(Locale.ROOT, "%.1f in/h", rate / INCH_PER_HOUR);
  }
}
