package org.underlee.units;

import java.util.Locale;
import org.underlee.units.Lengths.UnitSystem;

/** How hard it rains, at the edge of the program: metres per second inside. */
public final class RainRates {
  private static final double HOUR = 3600;

  public static final double MM_PER_HOUR = Lengths.MM / HOUR;
  public static final double INCH_PER_HOUR = Lengths.INCH / HOUR;

  private RainRates() {}

  /** {@code 203 mm/h} or {@code 8.0 in/h}. */
  public static String format(double rate, UnitSystem system) {
    return system == UnitSystem.METRIC
        ? Math.round(rate / MM_PER_HOUR) + " mm/h"
        : String.format(Locale.ROOT, "%.1f in/h", rate / INCH_PER_HOUR);
  }
}
