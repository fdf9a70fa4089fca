package org.underlee.writeback;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.underlee.step.StepReal;
import org.underlee.step.StepText;

/** One attribute value in the text of a Part 21 file. */
record Value(String token) {
  static final Value UNSET = new Value("$");
  static final Value DERIVED = new Value("*");
  static final Value TRUE = new Value(".T.");
  static final Value FALSE = new Value(".F.");

  /**
   * Longest text of an IfcLabel or IfcIdentifier (IFC schema: {@code STRING(255)} by definition).
   */
  private static final int LABEL_LIMIT = 255;

  static Value reference(long id) {
    return new Value("#" + id);
  }

  /** An IfcText: of any length. */
  static Value text(String text) {
    return new Value(StepText.quoted(text));
  }

  /** An IfcLabel or IfcIdentifier: cut between two characters to the length allowed. */
  static Value label(String text) {
    if (text.length() <= LABEL_LIMIT) {
      return text(text);
    }
    int end = LABEL_LIMIT - 1;
    boolean within = Character.isHighSurrogate(text.charAt(end - 1));
    return text(text.substring(0, within ? end - 1 : end) + "…");
  }

  static Value real(double value) {
    // Adding zero turns −0 into 0, so that equal values read the same.
    return new Value(StepReal.format(value + 0.0));
  }

  static Value integer(long value) {
    return new Value(Long.toString(value));
  }

  /** {@code .SHEET.} */
  static Value enumeration(String name) {
    return new Value("." + name + ".");
  }

  /** {@code IFCLABEL('NEW')} */
  static Value typed(String type, Value value) {
    return new Value(type.toUpperCase(Locale.ROOT) + "(" + value.token + ")");
  }

  static Value list(List<Value> values) {
    return new Value(values.stream().map(Value::token).collect(Collectors.joining(",", "(", ")")));
  }

  static Value list(Value... values) {
    return list(List.of(values));
  }

  @Override
  public String toString() {
    return token;
  }
}
