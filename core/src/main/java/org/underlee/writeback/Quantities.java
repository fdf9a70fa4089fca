package org.underlee.writeback;

/** One physical quantity. */
final class Quantities {
  private Quantities() {}

  /**
   * @param kind {@code Length}, {@code Area}, {@code Volume}, {@code Weight} or {@code Count}
   * @param value in the model's unit of that kind
   */
  static Value add(Draft draft, String kind, String name, Value value) {
    String entity = "IfcQuantity" + kind;
    return draft.ifc2x3()
        ? draft.out().add(entity, Value.label(name), Value.UNSET, Value.UNSET, value)
        : draft.out().add(entity, Value.label(name), Value.UNSET, Value.UNSET, value, Value.UNSET);
  }
}
