package org.underlee.schema;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.underlee.schema.ExpressValue.Aggregate;
import org.underlee.schema.ExpressValue.Num;

/** What names mean where an expression stands. */
final class Scope {
  private final World world;
  private final ExpressValue self;
  private final Optional<Scope> outer;
  private final Map<String, ExpressValue> locals = new HashMap<>();
  private final Map<String, ExpressType> types = new HashMap<>();

  private Scope(World world, ExpressValue self, Optional<Scope> outer) {
    this.world = world;
    this.self = self;
    this.outer = outer;
  }

  /** Of a rule of an entity or type; of a function, without a SELF. */
  static Scope of(World world, ExpressValue self) {
    return new Scope(world, self, Optional.empty());
  }

  /** The same with one more variable. */
  Scope with(String name, ExpressValue value) {
    Scope inner = new Scope(world, self, Optional.of(this));
    inner.locals.put(name, value);
    return inner;
  }

  World world() {
    return world;
  }

  ExpressValue self() {
    return self;
  }

  Optional<ExpressValue> local(String name) {
    ExpressValue own = locals.get(name);
    return own != null ? Optional.of(own) : outer.flatMap(o -> o.local(name));
  }

  /** An attribute of SELF, where that has one of this name. */
  Optional<ExpressValue> ofSelf(String name) {
    return world.has(self, name) ? Optional.of(world.attribute(self, name)) : Optional.empty();
  }

  void declare(String name, ExpressType type, ExpressValue value) {
    types.put(name, type);
    set(name, value);
  }

  /** Sets a variable where it was declared. */
  void set(String name, ExpressValue value) {
    if (!types.containsKey(name) && outer.isPresent() && outer.get().local(name).isPresent()) {
      outer.get().set(name, value);
    } else {
      locals.put(name, types.containsKey(name) ? fitted(types.get(name), value) : value);
    }
  }

  /** An array begins with the index that it was declared with; a set has nothing twice. */
  private ExpressValue fitted(ExpressType type, ExpressValue value) {
    if (!(type instanceof ExpressType.Aggregate declared)
        || !(value.plain() instanceof Aggregate a)) {
      return value;
    }
    if (declared.kind().equals("SET")) {
      return Aggregate.of(a.values().stream().distinct().toList());
    }
    boolean array = declared.kind().equals("ARRAY");
    return array && declared.low().in(this).plain() instanceof Num low
        ? new Aggregate((int) low.value(), a.values())
        : value;
  }
}
