package org.underlee.layout;

import java.util.OptionalInt;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * An arrangement of the whole field that serves a bay which the chosen one leaves open, with its
 * price.
 *
 * @param what is done otherwise
 * @param runPerFall the fall it needs, where it needs another: 120 is 1:120
 * @param plan what the field is then
 * @param chosen the field as it is laid out
 */
record Alternative(Words what, OptionalInt runPerFall, FieldPlan plan, FieldPlan chosen) {
  /** Metres of headroom under the lowest pan that it gives, more than the chosen arrangement. */
  double headroomGained() {
    return plan.lowestSeat() - chosen.lowestSeat();
  }

  Words words() {
    return chosen.served().isEmpty()
        ? Words.of("%s: %s", what, price())
        : Words.of("%s: %s, %s", what, price(), headroom());
  }

  Words price() {
    return Words.of(
        "%s served in the field against %s, rail legs cut %s against %s",
        Quantity.area(plan.area()),
        Quantity.area(chosen.area()),
        Quantity.count(plan.cuts()),
        Quantity.count(chosen.cuts()));
  }

  private Words headroom() {
    return Words.of(
        headroomGained() < 0 ? "the lowest pan end %s lower" : "the lowest pan end %s higher",
        Quantity.length(Math.abs(headroomGained())));
  }
}
