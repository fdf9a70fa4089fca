package org.underlee.schema;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.schema.ExpressValue.Aggregate;
import org.underlee.schema.ExpressValue.Logical;
import org.underlee.schema.ExpressValue.Made;
import org.underlee.schema.ExpressValue.Num;
import org.underlee.schema.ExpressValue.Unset;

/** An EXPRESS statement (ISO 10303-11, clause 13), which executes itself in a scope. */
interface Statement {
  Flow run(Scope scope);

  /**
   * How a statement ended.
   *
   * @param value what was returned
   */
  record Flow(Kind kind, ExpressValue value) {
    enum Kind {
      NEXT,
      SKIP,
      ESCAPE,
      RETURN
    }

    static final Flow NEXT = new Flow(Kind.NEXT, Unset.UNSET);
    static final Flow SKIP = new Flow(Kind.SKIP, Unset.UNSET);
    static final Flow ESCAPE = new Flow(Kind.ESCAPE, Unset.UNSET);
  }

  /** {@code BEGIN … END}, and any list of statements. */
  record Block(List<Statement> statements) implements Statement {
    @Override
    public Flow run(Scope scope) {
      for (Statement statement : statements) {
        Flow flow = statement.run(scope);
        if (flow.kind() != Flow.Kind.NEXT) {
          return flow;
        }
      }
      return Flow.NEXT;
    }
  }

  /** SKIP, ESCAPE and the empty statement. */
  record Jump(Flow flow) implements Statement {
    @Override
    public Flow run(Scope scope) {
      return flow;
    }
  }

  record Return(Expr value) implements Statement {
    @Override
    public Flow run(Scope scope) {
      return new Flow(Flow.Kind.RETURN, value.in(scope));
    }
  }

  record If(Expr condition, Statement then, Statement otherwise) implements Statement {
    @Override
    public Flow run(Scope scope) {
      return condition.in(scope).isTrue() ? then.run(scope) : otherwise.run(scope);
    }
  }

  /** CASE; the first branch with a label equal to the selector. */
  record Case(Expr selector, List<Branch> branches, Statement otherwise) implements Statement {
    record Branch(List<Expr> labels, Statement statement) {}

    @Override
    public Flow run(Scope scope) {
      ExpressValue value = selector.in(scope);
      for (Branch branch : branches) {
        for (Expr label : branch.labels) {
          if (Operators.equal(value, label.in(scope), scope.world()) == Logical.TRUE) {
            return branch.statement.run(scope);
          }
        }
      }
      return otherwise.run(scope);
    }
  }

  /**
   * REPEAT.
   *
   * @param counter its variable, where it counts
   * @param goOn WHILE condition
   * @param stop UNTIL condition
   */
  record Repeat(Optional<Counter> counter, Expr goOn, Expr stop, Statement body)
      implements Statement {
    record Counter(String name, Expr from, Expr to, Expr by) {}

    @Override
    public Flow run(Scope scope) {
      if (counter.isEmpty()) {
        return loop(scope, "", 0, Double.POSITIVE_INFINITY, 1);
      }
      Counter c = counter.get();
      if (c.from.in(scope).plain() instanceof Num from
          && c.to.in(scope).plain() instanceof Num to
          && c.by.in(scope).plain() instanceof Num by) {
        return loop(scope, c.name, from.value(), to.value(), by.value());
      }
      return Flow.NEXT;
    }

    private Flow loop(Scope outer, String name, double from, double to, double by) {
      Scope scope = outer.with(name, new Num(from));
      for (double i = from; by > 0 ? i <= to : i >= to; i += by) {
        scope.world().spend();
        scope.set(name, new Num(i));
        if (!goOn.in(scope).isTrue()) {
          return Flow.NEXT;
        }
        Flow flow = body.run(scope);
        if (flow.kind() == Flow.Kind.RETURN) {
          return flow;
        }
        if (flow.kind() == Flow.Kind.ESCAPE || stop.in(scope).isTrue()) {
          return Flow.NEXT;
        }
      }
      return Flow.NEXT;
    }
  }

  /** {@code name.attribute[index] := value}. */
  record Assign(String name, List<Step> path, Expr value) implements Statement {
    /** One step into a variable: an attribute, or else an index. */
    record Step(Optional<String> attribute, Expr index) {}

    @Override
    public Flow run(Scope scope) {
      ExpressValue before = scope.local(name).orElse(Unset.UNSET);
      scope.set(name, changed(scope, before, 0));
      return Flow.NEXT;
    }

    private ExpressValue changed(Scope scope, ExpressValue before, int depth) {
      if (depth == path.size()) {
        return value.in(scope);
      }
      Step step = path.get(depth);
      World world = scope.world();
      if (step.attribute.isPresent()) {
        String attribute = step.attribute.get();
        ExpressValue inner = changed(scope, world.attribute(before, attribute), depth + 1);
        Made copy = world.copied(before);
        Map<String, ExpressValue> attributes = new LinkedHashMap<>(copy.attributes());
        attributes.put(attribute, inner);
        return new Made(copy.entity(), attributes);
      }
      Aggregate list = before.plain() instanceof Aggregate a ? a : Aggregate.of(List.of());
      if (!(step.index.in(scope).plain() instanceof Num n) || n.value() < list.low()) {
        throw new NotExecuted("an index that is no number or below the first");
      }
      int index = (int) n.value();
      return list.with(index, changed(scope, list.at(index), depth + 1));
    }
  }
}
