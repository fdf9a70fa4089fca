package org.underlee.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.underlee.schema.ExpressValue.Logical;
import org.underlee.schema.ExpressValue.Num;
import org.underlee.schema.ExpressValue.Str;

/** Reads expressions, with the precedence of ISO 10303-11, clause 12. */
final class ExpressionParser {
  private static final Set<String> RELATIONS =
      Set.of("<", ">", "<=", ">=", "=", "<>", ":=:", ":<>:", "IN", "LIKE");

  private static final Set<String> ADDING = Set.of("+", "-", "OR", "XOR");
  private static final Set<String> MULTIPLYING = Set.of("*", "/", "DIV", "MOD", "AND", "||");

  private static final Map<String, ExpressValue> CONSTANTS =
      Map.of(
          "TRUE", Logical.TRUE,
          "FALSE", Logical.FALSE,
          "UNKNOWN", Logical.UNKNOWN,
          "PI", new Num(Math.PI),
          "CONST_E", new Num(Math.E));

  private final Tokens tokens;

  ExpressionParser(Tokens tokens) {
    this.tokens = tokens;
  }

  Expr expression() {
    Expr left = sum();
    return tokens.atAny(RELATIONS) ? new Expr.Binary(tokens.next().text(), left, sum()) : left;
  }

  private Expr sum() {
    Expr left = product();
    while (tokens.atAny(ADDING)) {
      left = new Expr.Binary(tokens.next().text(), left, product());
    }
    return left;
  }

  private Expr product() {
    Expr left = power();
    while (tokens.atAny(MULTIPLYING)) {
      left = new Expr.Binary(tokens.next().text(), left, power());
    }
    return left;
  }

  private Expr power() {
    Expr base = unary();
    return tokens.take("**") ? new Expr.Binary("**", base, unary()) : base;
  }

  private Expr unary() {
    if (tokens.take("NOT")) {
      return new Expr.Not(unary());
    }
    if (tokens.take("-")) {
      return new Expr.Minus(unary());
    }
    tokens.take("+");
    return qualified(primary());
  }

  private Expr primary() {
    Token token = tokens.peek();
    if (token.kind() == Token.Kind.NUMBER) {
      return new Expr.Literal(new Num(Double.parseDouble(tokens.next().text())));
    }
    if (token.kind() == Token.Kind.TEXT) {
      return new Expr.Literal(new Str(tokens.next().text()));
    }
    if (tokens.take("?")) {
      return Expr.UNSET;
    }
    if (tokens.take("(")) {
      Expr inner = expression();
      tokens.expect(")");
      return inner;
    }
    if (tokens.take("[")) {
      return list();
    }
    return tokens.take("{") ? between() : named(tokens.word());
  }

  private Expr named(String word) {
    ExpressValue constant = CONSTANTS.get(word);
    if (constant != null) {
      return new Expr.Literal(constant);
    }
    if (word.equals("SELF")) {
      return new Expr.Self();
    }
    if (word.equals("QUERY")) {
      return query();
    }
    return tokens.take("(") ? new Expr.Call(word, arguments()) : new Expr.Name(word);
  }

  private List<Expr> arguments() {
    List<Expr> arguments = new ArrayList<>();
    while (!tokens.take(")")) {
      arguments.add(expression());
      if (!tokens.at(")")) {
        tokens.expect(",");
      }
    }
    return List.copyOf(arguments);
  }

  private Expr query() {
    tokens.expect("(");
    String name = tokens.word();
    tokens.expect("<*");
    Expr of = expression();
    tokens.expect("|");
    Expr condition = expression();
    tokens.expect(")");
    return new Expr.Query(name, of, condition);
  }

  private Expr list() {
    List<Expr.ListOf.Repeated> items = new ArrayList<>();
    while (!tokens.take("]")) {
      Expr value = expression();
      Expr times = tokens.take(":") ? expression() : new Expr.Literal(new Num(1));
      items.add(new Expr.ListOf.Repeated(value, times));
      if (!tokens.at("]")) {
        tokens.expect(",");
      }
    }
    return new Expr.ListOf(List.copyOf(items));
  }

  private Expr between() {
    Expr low = sum();
    String lowSign = tokens.next().text();
    Expr value = sum();
    String highSign = tokens.next().text();
    Expr high = sum();
    tokens.expect("}");
    return new Expr.Between(low, lowSign, value, highSign, high);
  }

  private Expr qualified(Expr first) {
    Expr base = first;
    while (true) {
      if (tokens.take(".")) {
        base = new Expr.Attribute(base, tokens.word());
      } else if (tokens.take("\\")) {
        base = new Expr.Group(base, tokens.word());
      } else if (tokens.take("[")) {
        base = index(base);
      } else {
        return base;
      }
    }
  }

  private Expr index(Expr base) {
    Expr from = expression();
    Expr to = tokens.take(":") ? expression() : from;
    tokens.expect("]");
    return new Expr.Index(base, from, to);
  }
}
