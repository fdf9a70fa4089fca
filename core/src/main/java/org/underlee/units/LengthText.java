package org.underlee.units;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads lengths as people write them: {@code 7' 9 1/2"}, {@code 7'9-1/2"}, {@code 16in}, {@code 3
 * ft}, {@code 9.25"}, {@code 2.36 m}, {@code 40cm}, {@code 400 mm}. A number without a unit is
 * refused, because a wrong guess is a wrong deck.
 */
public final class LengthText {
  private static final Pattern METRIC = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(mm|cm|m)");

  private static final Pattern FEET_INCHES =
      Pattern.compile(
          "(?:(\\d+(?:\\.\\d+)?)\\s*(?:'|ft))?" // feet
              + "(?:[\\s-]*(?:(\\d+(?:\\.\\d+)?)(?![/\\d]))?" // whole or decimal inches
              + "(?:[\\s-]*(\\d+)/(\\d+))?\\s*(\"|in))?"); // a fraction, and the unit

  private LengthText() {}

  /**
   * The length in metres.
   *
   * @throws IllegalArgumentException when the text is not a length, saying what would be
   */
  public static double parse(String text) {
    String plain = text.strip();
    Matcher metric = METRIC.matcher(plain);
    if (metric.matches()) {
      return Double.parseDouble(metric.group(1)) * metres(metric.group(2));
    }
    Matcher feet = FEET_INCHES.matcher(plain);
    if (!plain.isEmpty() && plain.charAt(0) != '-' && feet.matches() && hasNumber(feet)) {
      return number(feet.group(1)) * Lengths.FOOT
          + (number(feet.group(2)) + fraction(feet, plain)) * Lengths.INCH;
    }
    throw new IllegalArgumentException(
        "\"" + text + "\" is not a length; write it like 7' 9 1/2\", 16in, 400mm or 2.36m");
  }

  /**
   * As {@link #parse}, of a height that may be below what it is told from: {@code -3/8"}, {@code
   * −20 mm}.
   */
  public static double parseSigned(String text) {
    String plain = text.strip();
    boolean below = plain.startsWith("-") || plain.startsWith("\u2212");
    return below ? -parse(plain.substring(1)) : parse(plain);
  }

  private static boolean hasNumber(Matcher feet) {
    boolean inches = feet.group(2) != null || feet.group(3) != null;
    return (feet.group(1) != null || inches) && (feet.group(5) == null || inches);
  }

  private static double metres(String unit) {
    return switch (unit) {
      case "mm" -> Lengths.MM;
      case "cm" -> 10 * Lengths.MM;
      default -> 1;
    };
  }

  private static double number(@Nullable String digits) {
    return digits == null ? 0 : Double.parseDouble(digits);
  }

  private static double fraction(Matcher feet, String text) {
    if (feet.group(3) == null) {
      return 0;
    }
    double below = number(feet.group(4));
    if (below == 0) {
      throw new IllegalArgumentException("\"" + text + "\" divides by zero; write it like 9 1/2\"");
    }
    return number(feet.group(3)) / below;
  }
}
