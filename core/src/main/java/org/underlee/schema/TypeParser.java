package org.underlee.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.underlee.schema.ExpressValue.Num;

/** Reads types (ISO 10303-11, clause 8). */
final class TypeParser {
  private static final Set<String> SIMPLE =
      Set.of("STRING", "REAL", "INTEGER", "NUMBER", "BOOLEAN", "LOGICAL", "BINARY");

  private static final Set<String> AGGREGATES = Set.of("SET", "LIST", "BAG", "ARRAY", "AGGREGATE");

  private final Tokens tokens;
  private final ExpressionParser expressions;

  TypeParser(Tokens tokens, ExpressionParser expressions) {
    this.tokens = tokens;
    this.expressions = expressions;
  }

  ExpressType type() {
    if (tokens.atAny(AGGREGATES)) {
      return aggregate(tokens.word());
    }
    if (tokens.atAny(SIMPLE)) {
      return simple(tokens.word());
    }
    if (tokens.take("ENUMERATION")) {
      tokens.expect("OF");
      return new ExpressType.Enumeration(list());
    }
    if (tokens.take("SELECT")) {
      return new ExpressType.Select(list());
    }
    if (tokens.take("GENERIC")) {
      label();
      return new ExpressType.Generic();
    }
    return new ExpressType.Named(tokens.word());
  }

  /** {@code : T} after a type of a function's parameter. */
  private void label() {
    if (tokens.take(":")) {
      tokens.word();
    }
  }

  private List<String> list() {
    List<String> names = new ArrayList<>();
    tokens.expect("(");
    do {
      names.add(tokens.word());
    } while (tokens.take(","));
    tokens.expect(")");
    return List.copyOf(names);
  }

  private ExpressType simple(String kind) {
    OptionalInt width = OptionalInt.empty();
    if (tokens.take("(")) {
      width = OptionalInt.of(bound(expressions.expression(), 0));
      tokens.expect(")");
    }
    return new ExpressType.Simple(kind, width, tokens.take("FIXED"));
  }

  private ExpressType aggregate(String kind) {
    Expr low = new Expr.Literal(new Num(0));
    Expr high = Expr.UNSET;
    if (tokens.take("[")) {
      low = expressions.expression();
      tokens.expect(":");
      high = expressions.expression();
      tokens.expect("]");
    } else if (kind.equals("AGGREGATE")) {
      label();
    }
    tokens.expect("OF");
    boolean optional = tokens.take("OPTIONAL");
    boolean unique = tokens.take("UNIQUE");
    return new ExpressType.Aggregate(kind, low, high, optional, unique, type());
  }

  /** A bound that is a number; else what is given. */
  static int bound(Expr bound, int otherwise) {
    return bound instanceof Expr.Literal l && l.value() instanceof Num n
        ? (int) n.value()
        : otherwise;
  }
}
