package org.underlee.schema;

import java.util.Map;
import java.util.TreeMap;
import org.underlee.schema.ExpressValue.Logical;

/** Executes WHERE rules, and keeps which of them could not be. */
final class WhereCheck {
  private final World world;
  private final Map<String, String> notExecuted = new TreeMap<>();
  private long executed;

  WhereCheck(World world) {
    this.world = world;
  }

  /** Whether a rule holds of an instance or value. A rule breaks only where this is FALSE. */
  Logical holds(String of, Schema.Where rule, ExpressValue self) {
    return holds(of, rule, Scope.of(world, self));
  }

  Logical holds(String of, Schema.Where rule, Scope scope) {
    world.begin();
    try {
      Logical holds = rule.condition().in(scope).logical();
      executed++;
      return holds;
    } catch (NotExecuted e) {
      notExecuted.putIfAbsent(
          world.schema().spelled(of) + "." + rule.label(), String.valueOf(e.getMessage()));
      return Logical.UNKNOWN;
    }
  }

  /** Why, by rule. */
  Map<String, String> notExecuted() {
    return notExecuted;
  }

  long executed() {
    return executed;
  }
}
