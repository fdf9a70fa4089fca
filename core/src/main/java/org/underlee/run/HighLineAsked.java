package org.underlee.run;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.framing.Field;
import org.underlee.framing.HighLine;
import org.underlee.units.LengthText;

/**
 * A field that is to fall both ways, and where its high line is to be.
 *
 * @param field its name
 * @param station metres from the field's high end; where the program puts it when empty
 */
public record HighLineAsked(String field, OptionalDouble station) {
  private static final char AT = '@';

  /**
   * As after {@code --both-ways}: {@code deck-1/field-1}, or with a place {@code
   * deck-1/field-1@2.36 m}.
   *
   * @throws IllegalArgumentException when what is after the sign is no length
   */
  public static HighLineAsked parse(String text) {
    int at = text.indexOf(AT);
    return at < 0
        ? new HighLineAsked(text.strip(), OptionalDouble.empty())
        : new HighLineAsked(
            text.substring(0, at).strip(),
            OptionalDouble.of(LengthText.parse(text.substring(at + 1))));
  }

  /** What gives a field that falls both ways again; empty for the second half, and for others. */
  static Optional<HighLineAsked> of(Field half) {
    return half.highLine()
        .filter(HighLine::first)
        .map(
            h ->
                new HighLineAsked(
                    half.id(),
                    h.asked() ? OptionalDouble.of(h.station()) : OptionalDouble.empty()));
  }

  /** As it is parsed, to the last digit of the length. */
  public String text() {
    return station.isPresent() ? field + AT + length(station.getAsDouble()) : field;
  }

  /** A length that is read as the same number again. */
  static String length(double metres) {
    return BigDecimal.valueOf(metres).toPlainString() + "m";
  }
}
