package org.underlee.schema;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** The type of an attribute or variable, or what a defined type stands for. */
sealed interface ExpressType {

  /**
   * {@code STRING(22) FIXED}.
   *
   * @param kind in upper case
   * @param width most characters, or exactly as many when fixed
   */
  record Simple(String kind, OptionalInt width, boolean fixed) implements ExpressType {
    @Override
    public String toString() {
      return kind + (width.isPresent() ? "(" + width.getAsInt() + ")" : "");
    }
  }

  /** An entity or a defined type, in upper case. */
  record Named(String name) implements ExpressType {
    @Override
    public String toString() {
      return name;
    }
  }

  /**
   * {@code LIST [2:?] OF UNIQUE IfcLabel}.
   *
   * @param kind {@code SET}, {@code LIST}, {@code BAG} or {@code ARRAY}
   * @param high {@link Expr#UNSET} when there is no upper bound
   */
  record Aggregate(
      String kind, Expr low, Expr high, boolean optional, boolean unique, ExpressType of)
      implements ExpressType {
    /** No value twice. */
    boolean distinct() {
      return unique || kind.equals("SET");
    }

    @Override
    public String toString() {
      return kind + " OF " + of;
    }
  }

  /** The names that a value may have, in upper case. */
  record Enumeration(List<String> items) implements ExpressType {
    @Override
    public String toString() {
      return "one of " + items.stream().collect(Collectors.joining(", "));
    }
  }

  /** The types that a value may be of. */
  record Select(List<String> of) implements ExpressType {
    @Override
    public String toString() {
      return "one of " + String.join(", ", of);
    }
  }

  /** Anything: parameters of functions only. */
  record Generic() implements ExpressType {}
}
