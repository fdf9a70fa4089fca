package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import org.underlee.finding.Fix;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * An arrangement of the whole field that serves a bay which the chosen one leaves open, with its
 * price.
 *
 * @param what is done otherwise
 * @param option that asks for it, where one does
 * @param plans what the field is then: two where it falls both ways
 * @param chosen the field as it is laid out
 */
record Alternative(
    Words what, Optional<Fix.Option> option, List<FieldPlan> plans, FieldPlan chosen) {
  static Alternative of(Words what, FieldPlan plan, FieldPlan chosen) {
    return new Alternative(what, Optional.empty(), List.of(plan), chosen);
  }

  /**
   * @param runPerFall the fall it needs: 120 is 1:120
   */
  static Alternative at(int runPerFall, Words what, FieldPlan plan, FieldPlan chosen) {
    Fix.Option fall = new Fix.Option("--fall", "1:" + runPerFall);
    return new Alternative(what, Optional.of(fall), List.of(plan), chosen);
  }

  static Alternative bothWays(List<FieldPlan> halves, FieldPlan chosen) {
    return new Alternative(
        Words.of("falling both ways from a high line inside the joists"),
        Optional.of(new Fix.Option("--both-ways", chosen.bays().field().id())),
        halves,
        chosen);
  }

  /** Metres of headroom under the lowest pan that it gives, more than the chosen arrangement. */
  double headroomGained() {
    double lowest = plans.stream().mapToDouble(FieldPlan::lowestSeat).min().orElseThrow();
    return lowest - chosen.lowestSeat();
  }

  Words words() {
    return chosen.served().isEmpty()
        ? Words.of("%s: %s", what, price())
        : Words.of("%s: %s, %s", what, price(), headroom());
  }

  Words price() {
    return Words.of(
        "%s served in the field against %s, rail legs cut %s against %s",
        Quantity.area(plans.stream().mapToDouble(FieldPlan::area).sum()),
        Quantity.area(chosen.area()),
        Quantity.count(plans.stream().mapToInt(FieldPlan::cuts).sum()),
        Quantity.count(chosen.cuts()));
  }

  private Words headroom() {
    return Words.of(
        headroomGained() < 0 ? "the lowest pan end %s lower" : "the lowest pan end %s higher",
        Quantity.length(Math.abs(headroomGained())));
  }
}
