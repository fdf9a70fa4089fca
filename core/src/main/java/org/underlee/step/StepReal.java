package org.underlee.step;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Reals as Part 21 writes them: the fewest digits that read back as the same number, always with a
 * point, on every Java version and in every locale. {@code 12.5}, {@code 0.}, {@code 1.E-05}.
 */
public final class StepReal {
  /** Decimals up to this many places are found by one division. */
  private static final double PLACES_FACTOR = 1e6;

  private static final int PLACES = 6;

  /** Any decimal of at most 15 digits reads back from the double nearest to it. */
  private static final int SURE_DIGITS = 15;

  private static final double SURE_LIMIT = 1e15;

  /** Any double reads back from 17 digits. */
  private static final int ENOUGH_DIGITS = 17;

  /** Smaller numbers are written with an exponent. */
  private static final int SMALLEST_PLAIN_EXPONENT = -4;

  private StepReal() {}

  /**
   * The number as text.
   *
   * @throws IllegalArgumentException for an infinite number or one that is none
   */
  public static String format(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("Part 21 has no way to write " + value);
    }
    return value == 0 ? "0." : text(shortest(value));
  }

  private static BigDecimal shortest(double value) {
    double scaled = Math.rint(value * PLACES_FACTOR);
    if (Math.abs(scaled) < SURE_LIMIT && scaled != 0 && scaled / PLACES_FACTOR == value) {
      return BigDecimal.valueOf((long) scaled, PLACES).stripTrailingZeros();
    }
    BigDecimal exact = new BigDecimal(value);
    // Subnormal numbers hold fewer digits, so a shorter decimal may do.
    int first = Math.abs(value) < Double.MIN_NORMAL ? 1 : SURE_DIGITS;
    for (int digits = first; digits < ENOUGH_DIGITS; digits++) {
      BigDecimal rounded = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
      if (rounded.doubleValue() == value) {
        return rounded.stripTrailingZeros();
      }
    }
    return exact.round(new MathContext(ENOUGH_DIGITS, RoundingMode.HALF_EVEN)).stripTrailingZeros();
  }

  private static String text(BigDecimal value) {
    String digits = value.unscaledValue().abs().toString();
    String sign = value.signum() < 0 ? "-" : "";
    int exponent = digits.length() - 1 - value.scale();
    if (exponent >= SURE_DIGITS || exponent < SMALLEST_PLAIN_EXPONENT) {
      String tens = (Math.abs(exponent) < 10 ? "0" : "") + Math.abs(exponent);
      return sign
          + digits.charAt(0)
          + "."
          + digits.substring(1)
          + (exponent < 0 ? "E-" : "E")
          + tens;
    }
    if (exponent < 0) {
      return sign + "0." + "0".repeat(-exponent - 1) + digits;
    }
    String padded = digits + "0".repeat(Math.max(0, exponent + 1 - digits.length()));
    return sign + padded.substring(0, exponent + 1) + "." + padded.substring(exponent + 1);
  }
}
