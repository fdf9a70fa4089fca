package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as it stands in a text, read back without the program's own writers.
 *
 * @param kind what its unit measures
 * @param si in SI, counts as they are
 * @param half half of the last step that was printed
 */
record Printed(Kind kind, double si, double half, String text, int at) {
  enum Kind {
    LENGTH,
    AREA,
    VOLUME,
    SHARE,
    FALL,
    RAIN,
    FLOW,
    MASS,
    PLAIN
  }

  private static final double INCH = 0.0254;
  private static final double FOOT = 12 * INCH;
  private static final double GALLON = 231 * INCH * INCH * INCH;
  private static final double HOUR = 3600;
  private static final String NUMBER = "(?<![\\w.,/-])-?\\d+(?:[.]\\d+)?";

  /** {@code 7' 9 1/2"}, {@code 1 1/16"}, {@code 3/8"}. */
  private static final Pattern TAPE =
      Pattern.compile(
          "(?<![\\w/])(?:(\\d+)' )?(?:(\\d+)(?: (\\d+)/(\\d+))?|(\\d+)/(\\d+))(?:\"| in per ft)");

  private record Unit(String word, Kind kind, double si) {
    Pattern pattern() {
      return Pattern.compile(NUMBER + " ?" + word + "(?![\\w²/])");
    }
  }

  private static final List<Unit> UNITS =
      List.of(
          new Unit("mm/h", Kind.RAIN, 0.001 / HOUR),
          new Unit("in/h", Kind.RAIN, INCH / HOUR),
          new Unit("mm", Kind.LENGTH, 0.001),
          new Unit("in", Kind.LENGTH, INCH),
          new Unit("m²", Kind.AREA, 1),
          new Unit("cm²", Kind.AREA, 1e-4),
          new Unit("sq ft", Kind.AREA, FOOT * FOOT),
          new Unit("sq in", Kind.AREA, INCH * INCH),
          new Unit("L/s", Kind.FLOW, 0.001),
          new Unit("litres an hour", Kind.FLOW, 0.001 / HOUR),
          new Unit("gallons an hour", Kind.FLOW, GALLON / HOUR),
          new Unit("gpm", Kind.FLOW, GALLON / 60),
          new Unit("L", Kind.VOLUME, 0.001),
          new Unit("gal", Kind.VOLUME, GALLON),
          new Unit("kg", Kind.MASS, 1),
          new Unit("lb", Kind.MASS, 0.45359237),
          new Unit("%", Kind.SHARE, 0.01));

  private static final Pattern RATIO = Pattern.compile("(?<![\\w/])1:(\\d+(?:[.]\\d+)?)");
  private static final Pattern PLAIN = Pattern.compile(NUMBER);

  /** Every number of a text, in no order; what was read is blanked out, so none is read twice. */
  static List<Printed> in(String text) {
    StringBuilder left = new StringBuilder(text.replace('\u00a0', ' '));
    List<Printed> found = new ArrayList<>();
    for (Matcher m = TAPE.matcher(left.toString()); m.find(); blank(left, m)) {
      double inches = 12 * whole(m.group(1)) + whole(m.group(2));
      double parts = Math.max(whole(m.group(3)), whole(m.group(5)));
      double of = Math.max(1, Math.max(whole(m.group(4)), whole(m.group(6))));
      boolean perFoot =
          m.group().endsWith("per ft") || left.indexOf("per ft", m.end()) == m.end() + 1;
      double si = (inches + parts / of) * INCH;
      found.add(
          perFoot
              ? new Printed(Kind.FALL, si / FOOT, 1e-6, m.group(), m.start())
              : new Printed(Kind.LENGTH, si, INCH / 32, m.group(), m.start()));
    }
    for (Matcher m = RATIO.matcher(left.toString()); m.find(); blank(left, m)) {
      double run = Double.parseDouble(m.group(1));
      double half = half(m.group(1)) / (run * run);
      found.add(new Printed(Kind.FALL, 1 / run, half, m.group(), m.start()));
    }
    for (Unit unit : UNITS) {
      for (Matcher m = unit.pattern().matcher(left.toString()); m.find(); blank(left, m)) {
        found.add(one(unit.kind, unit.si, m));
      }
    }
    for (Matcher m = PLAIN.matcher(left.toString()); m.find(); blank(left, m)) {
      found.add(one(Kind.PLAIN, 1, m));
    }
    return found;
  }

  private static Printed one(Kind kind, double unit, Matcher m) {
    Matcher number = PLAIN.matcher(m.group());
    number.find();
    double si = Double.parseDouble(number.group()) * unit;
    return new Printed(kind, si, half(number.group()) * unit, m.group(), m.start());
  }

  private static double half(String number) {
    int point = number.indexOf('.');
    return 0.5 * Math.pow(10, point < 0 ? 0 : point + 1 - number.length());
  }

  private static double whole(String digits) {
    return digits == null ? 0 : Double.parseDouble(digits);
  }

  private static void blank(StringBuilder text, Matcher m) {
    for (int i = m.start(); i < m.end(); i++) {
      text.setCharAt(i, '_');
    }
  }

  /** The same altered by what one can see: one step of what was printed. */
  Printed oneStepMore() {
    return new Printed(kind, si + 2 * half, half, text, at);
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%s (%s %.6g)", text, kind, si);
  }
}
