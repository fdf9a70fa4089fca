package org.underlee.schema;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.underlee.schema.ExpressValue.Aggregate;
import org.underlee.schema.ExpressValue.Item;
import org.underlee.schema.ExpressValue.Logical;
import org.underlee.schema.ExpressValue.Made;
import org.underlee.schema.ExpressValue.Num;
import org.underlee.schema.ExpressValue.Str;
import org.underlee.schema.ExpressValue.Unset;

/** An EXPRESS expression (ISO 10303-11, clause 12), which evaluates itself in a scope. */
interface Expr {
  ExpressValue in(Scope scope);

  Expr UNSET = new Literal(Unset.UNSET);

  record Literal(ExpressValue value) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      return value;
    }
  }

  record Self() implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      return scope.self();
    }
  }

  /** A variable, an attribute of SELF, an item of an enumeration, or all instances of an entity. */
  record Name(String name) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      return scope.local(name).or(() -> scope.ofSelf(name)).orElseGet(() -> global(scope));
    }

    private ExpressValue global(Scope scope) {
      return scope.world().schema().isEntity(name) ? scope.world().all(name) : new Item(name);
    }
  }

  /** {@code base.name}; of an enumeration's name, its item. */
  record Attribute(Expr base, String name) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      scope.world().spend();
      if (base instanceof Name n && scope.world().schema().isEnumeration(n.name())) {
        return new Item(name);
      }
      return scope.world().attribute(base.in(scope), name);
    }
  }

  /** {@code base\entity}: the value itself where it is one, else nothing. */
  record Group(Expr base, String entity) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      ExpressValue value = base.in(scope).plain();
      return scope.world().isA(value, entity) ? value : Unset.UNSET;
    }
  }

  /** {@code base[from]} or {@code base[from:to]}. */
  record Index(Expr base, Expr from, Expr to) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      ExpressValue of = base.in(scope).plain();
      if (!(from.in(scope).plain() instanceof Num first)
          || !(to.in(scope).plain() instanceof Num last)) {
        return Unset.UNSET;
      }
      if (of instanceof Aggregate a) {
        return a.at((int) first.value());
      }
      return of instanceof Str s ? part(s.value(), (int) first.value(), (int) last.value()) : of;
    }

    private static ExpressValue part(String s, int first, int last) {
      return first < 1 || last > s.length() || first > last
          ? Unset.UNSET
          : new Str(s.substring(first - 1, last));
    }
  }

  /** {@code [a, b : 3]}: the second number says how often. */
  record ListOf(List<Repeated> items) implements Expr {
    record Repeated(Expr value, Expr times) {}

    /** More copies of one value than this are no use to any rule. */
    private static final int MOST = 100_000;

    @Override
    public ExpressValue in(Scope scope) {
      List<ExpressValue> values = new ArrayList<>();
      for (Repeated item : items) {
        ExpressValue value = item.value.in(scope);
        double times = item.times.in(scope).plain() instanceof Num n ? n.value() : 0;
        for (int i = 0; i < Math.min(times, MOST); i++) {
          values.add(value);
        }
      }
      return Aggregate.of(values);
    }
  }

  record Not(Expr of) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      return of.in(scope).logical().not();
    }
  }

  record Minus(Expr of) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      return of.in(scope).plain() instanceof Num n ? new Num(-n.value()) : Unset.UNSET;
    }
  }

  /** Two operands; what decides without the second does not look at it. */
  record Binary(String operator, Expr left, Expr right) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      scope.world().spend();
      ExpressValue a = left.in(scope);
      if (operator.equals("AND") && a.logical() == Logical.FALSE) {
        return Logical.FALSE;
      }
      if (operator.equals("OR") && a.isTrue()) {
        return Logical.TRUE;
      }
      return Operators.apply(operator, a, right.in(scope), scope.world());
    }
  }

  /** {@code {low <= value < high}}. */
  record Between(Expr low, String lowSign, Expr value, String highSign, Expr high) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      ExpressValue v = value.in(scope);
      Logical first = Operators.apply(lowSign, low.in(scope), v, scope.world()).logical();
      Logical second = Operators.apply(highSign, v, high.in(scope), scope.world()).logical();
      return first.and(second);
    }
  }

  /** {@code QUERY(name <* of | condition)}. */
  record Query(String name, Expr of, Expr condition) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      if (!(of.in(scope).plain() instanceof Aggregate all)) {
        return Unset.UNSET;
      }
      List<ExpressValue> found = new ArrayList<>();
      for (ExpressValue each : all.values()) {
        scope.world().spend();
        if (condition.in(scope.with(name, each)).isTrue()) {
          found.add(each);
        }
      }
      return Aggregate.of(found);
    }
  }

  /** A function of the language or of the schema, or an entity made of its own attributes. */
  record Call(String name, List<Expr> arguments) implements Expr {
    @Override
    public ExpressValue in(Scope scope) {
      scope.world().spend();
      List<ExpressValue> values = new ArrayList<>();
      for (Expr argument : arguments) {
        values.add(argument.in(scope));
      }
      Schema schema = scope.world().schema();
      if (schema.function(name).isPresent()) {
        return schema.function(name).get().call(values, scope.world());
      }
      return schema.isEntity(name)
          ? made(schema, values)
          : BuiltIns.call(name, values, scope.world());
    }

    private ExpressValue made(Schema schema, List<ExpressValue> values) {
      Map<String, ExpressValue> attributes = new LinkedHashMap<>();
      List<Schema.Attribute> own = schema.entity(name).attributes();
      for (int i = 0; i < Math.min(own.size(), values.size()); i++) {
        attributes.put(own.get(i).name(), values.get(i));
      }
      return new Made(name, attributes);
    }
  }
}
