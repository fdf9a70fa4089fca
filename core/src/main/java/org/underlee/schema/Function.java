package org.underlee.schema;

import java.util.List;
import org.underlee.schema.ExpressValue.Unset;

/** A function of a schema. */
record Function(String name, List<Variable> parameters, List<Variable> locals, Statement body) {
  /** A parameter or local variable; the value that it begins with. */
  record Variable(String name, ExpressType type, Expr initial) {}

  ExpressValue call(List<ExpressValue> arguments, World world) {
    world.enter();
    try {
      Scope scope = Scope.of(world, Unset.UNSET);
      for (int i = 0; i < parameters.size(); i++) {
        ExpressValue value = i < arguments.size() ? arguments.get(i) : Unset.UNSET;
        scope.declare(parameters.get(i).name(), parameters.get(i).type(), value);
      }
      for (Variable local : locals) {
        scope.declare(local.name(), local.type(), local.initial().in(scope));
      }
      return body.run(scope).value();
    } finally {
      world.leave();
    }
  }
}
