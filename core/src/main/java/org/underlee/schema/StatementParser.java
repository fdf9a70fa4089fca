package org.underlee.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.schema.ExpressValue.Logical;
import org.underlee.schema.ExpressValue.Num;

/** Reads statements (ISO 10303-11, clause 13). */
final class StatementParser {
  private static final Statement NOTHING = new Statement.Jump(Statement.Flow.NEXT);

  private final Tokens tokens;
  private final ExpressionParser expressions;

  StatementParser(Tokens tokens, ExpressionParser expressions) {
    this.tokens = tokens;
    this.expressions = expressions;
  }

  /** Statements up to one of these words. */
  Statement until(Set<String> ends) {
    List<Statement> all = new ArrayList<>();
    while (!tokens.atAny(ends)) {
      all.add(statement());
    }
    return new Statement.Block(List.copyOf(all));
  }

  private Statement statement() {
    if (tokens.take(";")) {
      return NOTHING;
    }
    String word = tokens.word();
    return switch (word) {
      case "IF" -> condition();
      case "CASE" -> choice();
      case "REPEAT" -> repeat();
      case "BEGIN" -> ended(until(Set.of("END")), "END");
      case "RETURN" -> returned();
      case "SKIP" -> closed(new Statement.Jump(Statement.Flow.SKIP));
      case "ESCAPE" -> closed(new Statement.Jump(Statement.Flow.ESCAPE));
      default -> assignment(word);
    };
  }

  private Statement closed(Statement statement) {
    tokens.expect(";");
    return statement;
  }

  private Statement ended(Statement statement, String word) {
    tokens.expect(word);
    return closed(statement);
  }

  private Statement returned() {
    Expr value = tokens.at(";") ? Expr.UNSET : expressions.expression();
    return closed(new Statement.Return(value));
  }

  private Statement condition() {
    Expr condition = expressions.expression();
    tokens.expect("THEN");
    Statement then = until(Set.of("ELSE", "END_IF"));
    Statement otherwise = tokens.take("ELSE") ? until(Set.of("END_IF")) : NOTHING;
    return ended(new Statement.If(condition, then, otherwise), "END_IF");
  }

  private Statement choice() {
    Expr selector = expressions.expression();
    tokens.expect("OF");
    List<Statement.Case.Branch> branches = new ArrayList<>();
    Statement otherwise = NOTHING;
    while (!tokens.at("END_CASE")) {
      if (tokens.take("OTHERWISE")) {
        tokens.expect(":");
        otherwise = statement();
      } else {
        branches.add(branch());
      }
    }
    return ended(new Statement.Case(selector, List.copyOf(branches), otherwise), "END_CASE");
  }

  private Statement.Case.Branch branch() {
    List<Expr> labels = new ArrayList<>();
    do {
      labels.add(expressions.expression());
    } while (tokens.take(","));
    tokens.expect(":");
    return new Statement.Case.Branch(List.copyOf(labels), statement());
  }

  private Statement repeat() {
    Optional<Statement.Repeat.Counter> counter = Optional.empty();
    if (tokens.thenAt(":=")) {
      counter = Optional.of(counter());
    }
    Expr goOn = new Expr.Literal(Logical.TRUE);
    Expr stop = new Expr.Literal(Logical.FALSE);
    if (tokens.take("WHILE")) {
      goOn = expressions.expression();
    }
    if (tokens.take("UNTIL")) {
      stop = expressions.expression();
    }
    tokens.expect(";");
    Statement body = until(Set.of("END_REPEAT"));
    return ended(new Statement.Repeat(counter, goOn, stop, body), "END_REPEAT");
  }

  private Statement.Repeat.Counter counter() {
    String name = tokens.word();
    tokens.expect(":=");
    Expr from = expressions.expression();
    tokens.expect("TO");
    Expr to = expressions.expression();
    Expr by = tokens.take("BY") ? expressions.expression() : new Expr.Literal(new Num(1));
    return new Statement.Repeat.Counter(name, from, to, by);
  }

  private Statement assignment(String name) {
    List<Statement.Assign.Step> path = new ArrayList<>();
    while (!tokens.take(":=")) {
      if (tokens.take("\\")) {
        tokens.word();
      } else if (tokens.take(".")) {
        path.add(new Statement.Assign.Step(Optional.of(tokens.word()), Expr.UNSET));
      } else {
        tokens.expect("[");
        path.add(new Statement.Assign.Step(Optional.empty(), expressions.expression()));
        tokens.expect("]");
      }
    }
    return closed(new Statement.Assign(name, List.copyOf(path), expressions.expression()));
  }
}
