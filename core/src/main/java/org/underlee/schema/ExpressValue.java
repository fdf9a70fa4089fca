package org.underlee.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What an EXPRESS expression evaluates to. Immutable. */
sealed interface ExpressValue {
  /** What holds, does not, or cannot be told. */
  enum Logical implements ExpressValue {
    TRUE,
    FALSE,
    UNKNOWN;

    static Logical of(boolean is) {
      return is ? TRUE : FALSE;
    }

    Logical not() {
      return this == UNKNOWN ? UNKNOWN : of(this == FALSE);
    }

    Logical and(Logical other) {
      if (this == FALSE || other == FALSE) {
        return FALSE;
      }
      return of(this == TRUE && other == TRUE).orUnknown(this, other);
    }

    Logical or(Logical other) {
      return not().and(other.not()).not();
    }

    private Logical orUnknown(Logical a, Logical b) {
      return a == UNKNOWN || b == UNKNOWN ? UNKNOWN : this;
    }
  }

  /** {@code ?}: indeterminate, as an attribute that is not given. */
  enum Unset implements ExpressValue {
    UNSET
  }

  record Num(double value) implements ExpressValue {}

  record Str(String value) implements ExpressValue {}

  /** An item of an enumeration, in upper case. */
  record Item(String name) implements ExpressValue {}

  /** The digits of a binary as Part 21 writes them. */
  record Bits(String digits) implements ExpressValue {}

  /** A value of a select, which says of which defined type it is. */
  record Typed(String type, ExpressValue value) implements ExpressValue {}

  /**
   * A set, list, bag or array.
   *
   * @param low index of the first
   */
  record Aggregate(int low, List<ExpressValue> values) implements ExpressValue {
    public Aggregate {
      values = List.copyOf(values);
    }

    static Aggregate of(List<ExpressValue> values) {
      return new Aggregate(1, values);
    }

    int high() {
      return low + values.size() - 1;
    }

    ExpressValue at(int index) {
      return index < low || index > high() ? Unset.UNSET : values.get(index - low);
    }

    /** With one value set; it grows where it must. */
    Aggregate with(int index, ExpressValue value) {
      List<ExpressValue> copy = new ArrayList<>(values);
      while (copy.size() <= index - low) {
        copy.add(Unset.UNSET);
      }
      copy.set(index - low, value);
      return new Aggregate(low, copy);
    }
  }

  /** An instance of the file, by its index there. */
  record Instance(int index) implements ExpressValue {}

  /**
   * An entity that an expression made.
   *
   * @param attributes explicit ones by name
   */
  record Made(String entity, Map<String, ExpressValue> attributes) implements ExpressValue {
    public Made {
      attributes = Map.copyOf(attributes);
    }
  }

  /** What a typed value holds; else the value itself. */
  default ExpressValue plain() {
    return this instanceof Typed t ? t.value().plain() : this;
  }

  default boolean isUnset() {
    return plain() instanceof Unset;
  }

  default Logical logical() {
    return plain() instanceof Logical l ? l : Logical.UNKNOWN;
  }

  default boolean isTrue() {
    return logical() == Logical.TRUE;
  }
}
