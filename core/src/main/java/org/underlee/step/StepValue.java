package org.underlee.step;

import java.util.List;

/** A value of an attribute, as Part 21 writes it. */
public sealed interface StepValue {

  /** {@code #12}. */
  record Reference(long id) implements StepValue {}

  /** A string, decoded. */
  record Text(String value) implements StepValue {}

  /** A number with the digits that the author wrote. */
  sealed interface Numeral extends StepValue {
    String raw();

    double value();
  }

  /** {@code 12}. */
  record Int(String raw, double value) implements Numeral {}

  /** {@code 12.5}. */
  record Real(String raw, double value) implements Numeral {}

  /** {@code .JOIST.}, without the dots, in upper case. */
  record Enumeration(String name) implements StepValue {}

  /** {@code (1.,2.,3.)}. */
  record ListOf(List<StepValue> values) implements StepValue {
    public ListOf {
      values = List.copyOf(values);
    }
  }

  /** {@code IFCLABEL('x')}. */
  record Typed(String keyword, StepValue value) implements StepValue {}

  /** {@code $}. */
  record Omitted() implements StepValue {}

  /** {@code *}. */
  record Derived() implements StepValue {}

  /** {@code "0F"}: the first digit says how many bits of the rest are unused. */
  record Binary(String digits) implements StepValue {}

  /** What it is, in words for a message. */
  default String words() {
    if (this instanceof Reference r) {
      return "the reference #" + r.id();
    } else if (this instanceof Text t) {
      return "the text '" + t.value() + "'";
    } else if (this instanceof Numeral n) {
      return "the number " + n.raw();
    } else if (this instanceof Enumeration e) {
      return "the enumeration ." + e.name() + ".";
    } else if (this instanceof ListOf l) {
      return "a list of " + l.values().size();
    } else if (this instanceof Typed t) {
      return t.keyword() + " with " + t.value().words();
    } else if (this instanceof Binary) {
      return "a binary";
    }
    return this instanceof Omitted ? "nothing ($)" : "a derived value (*)";
  }
}
