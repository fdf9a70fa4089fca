package org.underlee.units;

import java.util.Locale;

/** Lengths at the edge of the program: metres inside, text outside. */
public final class Lengths {
  public static final double MM = 0.001;
  public static final double INCH = 0.0254;
  public static final double FOOT = 0.3048;

  /** Sixteenths: the finest mark on a common tape measure. */
  private static final int INCH_PARTS = 16;

  /** One of them. */
  public static final double TAPE_MARK = INCH / INCH_PARTS;

  /** Runs of a fall are shown in tenths. */
  static final double RUNS_PER_UNIT = 10;

  private Lengths() {}

  /** The unit system of a text. */
  public enum UnitSystem {
    METRIC,
    IMPERIAL
  }

  public static String format(double metres, UnitSystem system) {
    return system == UnitSystem.METRIC ? millimetres(metres) : feetInches(metres);
  }

  /** Lengths to cut are counted to this, metres: a tenth of a millimetre. */
  private static final double CUT_STEP = 1e-4;

  /** What is this little of a step below it, is on it: sums of doubles are not exact. */
  private static final double ON_STEP = 1e-6;

  private static final double TENTH_BELOW = CUT_STEP * (1 - 1e-3);

  /** A length to cut as it is counted, rounded down so that the piece fits. */
  public static double toCut(double metres) {
    return Math.floor(metres / CUT_STEP + ON_STEP) * CUT_STEP;
  }

  /**
   * Such a length as it is marked on a tape: whole millimetres or sixteenths, rounded down too. As
   * lengths are counted in tenths of a millimetre, no sixteenth is ever exactly on one: what is
   * less than a tenth below a sixteenth is on it.
   */
  public static String cut(double metres, UnitSystem system) {
    double counted = toCut(metres);
    return system == UnitSystem.METRIC
        ? millimetres(Math.floor(counted / MM + ON_STEP) * MM)
        : feetInches(Math.floor((counted + TENTH_BELOW) * INCH_PARTS / INCH) * INCH / INCH_PARTS);
  }

  /** Whole millimetres: {@code 2362 mm}. */
  public static String millimetres(double metres) {
    return Math.round(metres / MM) + " mm";
  }

  /** Feet, inches and sixteenths: {@code 7' 9 1/2"}, {@code 1 1/16"}, {@code 8' 0"}. */
  public static String feetInches(double metres) {
    long parts = Math.round(Math.abs(metres) / INCH * INCH_PARTS);
    long feet = parts / (12 * INCH_PARTS);
    long inches = parts / INCH_PARTS % 12;
    String sign = metres < 0 && parts > 0 ? "-" : "";
    String whole = feet > 0 ? feet + "' " + inches : Long.toString(inches);
    String fraction = fraction(parts % INCH_PARTS);
    if (!fraction.isEmpty() && feet == 0 && inches == 0) {
      return sign + fraction + "\"";
    }
    return sign + whole + (fraction.isEmpty() ? "" : " " + fraction) + "\"";
  }

  private static String fraction(long parts) {
    if (parts == 0) {
      return "";
    }
    long denominator = INCH_PARTS;
    while (parts % 2 == 0) {
      parts /= 2;
      denominator /= 2;
    }
    return parts + "/" + denominator;
  }

  /** As {@link #fall(double)}; in metric {@code 1:96 (10.4 mm per m)}. */
  public static String fall(double dropPerRun, UnitSystem system) {
    if (system == UnitSystem.IMPERIAL || dropPerRun <= 0) {
      return fall(dropPerRun);
    }
    String tenths = String.format(Locale.ROOT, "%.1f", dropPerRun / MM);
    return ratio(dropPerRun) + " (" + tenths.replaceFirst("\\.0$", "") + " mm per m)";
  }

  /** A fall as people say it: {@code 1:96 (1/8 in per ft)} or {@code 1:100}. */
  public static String fall(double dropPerRun) {
    if (dropPerRun <= 0) {
      return "level";
    }
    double sixteenthsPerFoot = dropPerRun * 12 * INCH_PARTS;
    long rounded = Math.round(sixteenthsPerFoot);
    String ratio = ratio(dropPerRun);
    boolean exact =
        rounded > 0 && rounded < INCH_PARTS && Math.abs(sixteenthsPerFoot - rounded) < 1e-6;
    return exact ? ratio + " (" + fraction(rounded) + " in per ft)" : ratio;
  }

  private static String ratio(double dropPerRun) {
    double run = 1 / dropPerRun;
    return "1:"
        + (Math.abs(run - Math.rint(run)) < 0.05
            ? Long.toString(Math.round(run))
            : String.format(Locale.ROOT, "%.1f", run));
  }
}
