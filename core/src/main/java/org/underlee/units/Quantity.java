package org.underlee.units;

import java.util.Locale;
import org.underlee.units.Lengths.UnitSystem;

/**
 * A measured or chosen number with what it measures, in SI; written in the reader's units only
 * where it is shown.
 *
 * @param rounding to which side it is rounded where it is shown
 */
public record Quantity(double si, Kind kind, Rounding rounding) {
  private static final double SQUARE_FOOT = Lengths.FOOT * Lengths.FOOT;

  private static final double HOUR = 3600;
  private static final double MINUTES = 60;
  private static final double SQUARE_CENTIMETRE = 1e-4;

  /** Areas below this, in m², are told in square centimetres or square inches. */
  private static final double SMALL = 0.02;

  private static final double PERCENT = 0.01;

  /** The international avoirdupois pound, exact. */
  private static final double POUND = 0.45359237;

  private static final double FAHRENHEIT_STEP = 5.0 / 9;

  /** What is measured; the unit of its SI number, and of its number in files. */
  public enum Kind {
    /** Metres; millimetres in files. */
    LENGTH("mm", Lengths.MM),
    /** Drop over run; a negative one runs backwards. */
    FALL("ratio", 1),
    /** A share of a whole. */
    SHARE("%", PERCENT),
    /** A plain number of things. */
    COUNT("count", 1),
    /** A plain factor. */
    FACTOR("ratio", 1),
    /** m². */
    AREA("m2", 1),
    /** m³/s; litres per second in files. */
    FLOW("L/s", Flows.LITRE_PER_SECOND),
    /** m³/s of a drip; litres per hour in files. */
    DRIP("L/h", Flows.LITRE_PER_SECOND / HOUR),
    /** m/s of rain; millimetres per hour in files. */
    RAIN("mm/h", RainRates.MM_PER_HOUR),
    /** kg/m². */
    LOAD("kg/m2", 1),
    /** kg. */
    MASS("kg", 1),
    /** Kelvin, a difference. */
    WARMING("K", 1);

    private final String fileUnit;
    private final double inFile;

    Kind(String fileUnit, double inFile) {
      this.fileUnit = fileUnit;
      this.inFile = inFile;
    }

    /** The unit of {@link Quantity#inFile()}. */
    public String fileUnit() {
      return fileUnit;
    }
  }

  /** The side that a shown number may err to. */
  public enum Rounding {
    NEAREST,
    UP,
    DOWN
  }

  /** Of a unit that is shown: what differs by less is the same number. */
  private static final double SAME = 1e-6;

  public Quantity(double si, Kind kind) {
    this(si, kind, Rounding.NEAREST);
  }

  /** The same as the least that will do: never shown as less than it is, so that it does. */
  public Quantity atLeast() {
    return new Quantity(si, kind, Rounding.UP);
  }

  /** The same as the most that will do: never shown as more than it is. */
  public Quantity atMost() {
    return new Quantity(si, kind, Rounding.DOWN);
  }

  public static Quantity length(double metres) {
    return new Quantity(metres, Kind.LENGTH);
  }

  public static Quantity fall(double dropPerRun) {
    return new Quantity(dropPerRun, Kind.FALL);
  }

  public static Quantity count(long number) {
    return new Quantity(number, Kind.COUNT);
  }

  public static Quantity area(double squareMetres) {
    return new Quantity(squareMetres, Kind.AREA);
  }

  public static Quantity of(Kind kind, double si) {
    return new Quantity(si, kind);
  }

  /** The number as it stands in files, in {@link Kind#fileUnit()}. */
  public double inFile() {
    return si / kind.inFile;
  }

  /** As a person reads it: {@code 2362 mm} or {@code 7' 9"}. */
  public String in(UnitSystem system) {
    boolean metric = system == UnitSystem.METRIC;
    return switch (kind) {
      case LENGTH -> Lengths.format(rounded(si, metric ? Lengths.MM : Lengths.TAPE_MARK), system);
      case FALL -> si < 0 ? Lengths.fall(-si) + " backwards" : Lengths.fall(fall());
      case SHARE -> share() + " %";
      case COUNT -> number(si, 0);
      case FACTOR -> number(si, 3);
      case AREA -> area(metric);
      case FLOW ->
          metric
              ? number(si / Flows.LITRE_PER_SECOND, 2) + " L/s"
              : number(si / Flows.GPM, 1) + " gpm";
      case DRIP ->
          metric
              ? number(si * HOUR / Flows.LITRE_PER_SECOND, 1) + " litres an hour"
              : number(si * MINUTES / Flows.GPM, 2) + " gallons an hour";
      case RAIN ->
          metric
              ? number(si / RainRates.MM_PER_HOUR, 0) + " mm/h"
              : number(si / RainRates.INCH_PER_HOUR, 1) + " in/h";
      case LOAD -> metric ? number(si, 1) + " kg/m²" : number(si * SQUARE_FOOT / POUND, 1) + " psf";
      case MASS -> metric ? number(si, 0) + " kg" : number(si / POUND, 0) + " lb";
      case WARMING ->
          metric ? number(si, 0) + " K" : number(si / FAHRENHEIT_STEP, 0) + " degrees F";
    };
  }

  /** In whole percent; with a decimal where that would tell the whole and something is missing. */
  private String share() {
    double nearest = Math.rint(si / PERCENT);
    return Shares.percent(si, 0) < nearest ? number(Shares.percent(si, 1), 1) : number(nearest, 0);
  }

  /** On the steps of what is shown, to the side that was asked for. */
  private double rounded(double value, double step) {
    return switch (rounding) {
      case NEAREST -> value;
      case UP -> Math.ceil(value / step - SAME) * step;
      case DOWN -> Math.floor(value / step + SAME) * step;
    };
  }

  /** A fall is shown by its run, which is the shorter the more it falls. */
  private double fall() {
    double tenths = Lengths.RUNS_PER_UNIT / si;
    return switch (rounding) {
      case NEAREST -> si;
      case UP -> Lengths.RUNS_PER_UNIT / Math.floor(tenths + SAME);
      case DOWN -> Lengths.RUNS_PER_UNIT / Math.ceil(tenths - SAME);
    };
  }

  /** In small units where large ones would show nothing. */
  private String area(boolean metric) {
    if (metric) {
      return si < SMALL ? number(si / SQUARE_CENTIMETRE, 0) + " cm²" : number(si, 2) + " m²";
    }
    return si < SMALL
        ? number(si / (Lengths.INCH * Lengths.INCH), 0) + " sq in"
        : number(si / SQUARE_FOOT, 1) + " sq ft";
  }

  /**
   * As in a calculation, before it is rounded for a tape measure: {@code 2362.2 mm} or {@code 93.00
   * in}.
   */
  public String exactlyIn(UnitSystem system) {
    return switch (kind) {
      case LENGTH ->
          system == UnitSystem.METRIC
              ? number(si / Lengths.MM, 1) + " mm"
              : number(si / Lengths.INCH, 2) + " in";
      case FACTOR -> si == Math.rint(si) ? number(si, 0) : number(si, 6);
      default -> in(system);
    };
  }

  private String number(double value, int decimals) {
    double shown = rounded(value, Math.pow(10, -decimals));
    String text = String.format(Locale.ROOT, "%." + decimals + "f", shown);
    boolean minusZero = text.startsWith("-") && text.chars().noneMatch(c -> c >= '1' && c <= '9');
    return minusZero ? text.substring(1) : text;
  }
}
