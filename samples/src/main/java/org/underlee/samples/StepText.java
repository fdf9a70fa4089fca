package org.underlee.samples;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers and strings as ISO 10303-21 writes them. */
final class StepText {
  /** Leaves the last noisy digits of a double away. */
  private static final MathContext SIGNIFICANT = new MathContext(15);

  /** In every unit of the samples far below a nanometre. */
  private static final int DECIMALS = 12;

  private StepText() {}

  static String real(double value) {
    BigDecimal number =
        new BigDecimal(value)
            .round(SIGNIFICANT)
            .setScale(DECIMALS, RoundingMode.HALF_EVEN)
            .stripTrailingZeros();
    if (number.signum() == 0) {
      return "0.";
    }
    String plain = number.toPlainString();
    return plain.indexOf('.') < 0 ? plain + "." : plain;
  }

  /** Runs outside ASCII become {@code \X2\…\X0\}; quotes and backslashes are doubled. */
  static String string(String text) {
    StringBuilder out = new StringBuilder("'");
    boolean wide = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean outside = c < ' ' || c > '~';
      if (outside != wide) {
        out.append(outside ? "\\X2\\" : "\\X0\\");
        wide = outside;
      }
      if (outside) {
        out.append(String.format(java.util.Locale.ROOT, "%04X", (int) c));
      } else if (c == '\'' || c == '\\') {
        out.append(c).append(c);
      } else {
        out.append(c);
      }
    }
    return out.append(wide ? "\\X0\\'" : "'").toString();
  }
}
