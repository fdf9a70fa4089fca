package org.underlee.schema;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads a SCHEMA of EXPRESS (ISO 10303-11, clause 9), as far as building schemas use it. */
final class SchemaParser {
  private static final Set<String> SECTIONS =
      Set.of("DERIVE", "INVERSE", "UNIQUE", "WHERE", "END_ENTITY");

  private final Tokens tokens;
  private final ExpressionParser expressions;
  private final TypeParser typeParser;
  private final Map<String, Schema.Entity> entities = new HashMap<>();
  private final Map<String, Schema.Type> types = new HashMap<>();
  private final Map<String, Function> functions = new HashMap<>();
  private final List<Schema.Global> globals = new ArrayList<>();

  SchemaParser(Tokens tokens) {
    this.tokens = tokens;
    this.expressions = new ExpressionParser(tokens);
    this.typeParser = new TypeParser(tokens, expressions);
  }

  Schema schema() {
    tokens.expect("SCHEMA");
    String name = tokens.word();
    tokens.expect(";");
    while (!tokens.take("END_SCHEMA")) {
      declaration();
    }
    return new Schema(name, entities, types, functions, globals, tokens.spellings());
  }

  private void declaration() {
    if (tokens.take("TYPE")) {
      type();
    } else if (tokens.take("ENTITY")) {
      entity();
    } else if (tokens.take("FUNCTION")) {
      Function function = function();
      functions.put(function.name(), function);
    } else if (tokens.take("RULE")) {
      global();
    } else {
      throw tokens.unexpected("TYPE, ENTITY, FUNCTION, RULE or END_SCHEMA");
    }
  }

  private void type() {
    String name = tokens.word();
    tokens.expect("=");
    ExpressType of = typeParser.type();
    tokens.expect(";");
    types.put(name, new Schema.Type(name, of, wheres()));
    tokens.expect("END_TYPE");
    tokens.expect(";");
  }

  private void entity() {
    String name = tokens.word();
    boolean isAbstract = tokens.at("ABSTRACT");
    Optional<String> parent = parent();
    List<Schema.Attribute> attributes = new ArrayList<>();
    while (!tokens.atAny(SECTIONS)) {
      attributes.addAll(attributes());
    }
    List<Schema.Derived> derived = derived();
    List<Schema.Inverse> inverses = inverses();
    List<Schema.Unique> uniques = uniques();
    List<Schema.Where> wheres = wheres();
    tokens.expect("END_ENTITY");
    tokens.expect(";");
    entities.put(
        name,
        new Schema.Entity(
            name, parent, isAbstract, attributes, derived, inverses, uniques, wheres));
  }

  /** Reads the heading through its semicolon. */
  private Optional<String> parent() {
    Optional<String> parent = Optional.empty();
    while (!tokens.take(";")) {
      if (tokens.take("SUBTYPE")) {
        tokens.expect("OF");
        tokens.expect("(");
        parent = Optional.of(tokens.word());
        tokens.expect(")");
      } else if (tokens.atEnd()) {
        throw tokens.unexpected("\";\"");
      } else {
        tokens.next();
      }
    }
    return parent;
  }

  private List<Schema.Attribute> attributes() {
    List<String> names = names();
    boolean optional = tokens.take("OPTIONAL");
    ExpressType type = typeParser.type();
    tokens.expect(";");
    return names.stream().map(n -> new Schema.Attribute(n, optional, type)).toList();
  }

  /** Names before a colon; of a redeclared attribute ({@code SELF\Entity.name}) the last word. */
  private List<String> names() {
    List<String> names = new ArrayList<>();
    do {
      names.add(attributeName());
    } while (tokens.take(","));
    tokens.expect(":");
    return names;
  }

  private String attributeName() {
    if (!tokens.take("SELF")) {
      return tokens.word();
    }
    tokens.expect("\\");
    tokens.word();
    tokens.expect(".");
    return tokens.word();
  }

  private List<Schema.Derived> derived() {
    List<Schema.Derived> all = new ArrayList<>();
    if (tokens.take("DERIVE")) {
      while (!tokens.atAny(SECTIONS)) {
        String name = attributeName();
        tokens.expect(":");
        typeParser.type();
        tokens.expect(":=");
        all.add(new Schema.Derived(name, expressions.expression()));
        tokens.expect(";");
      }
    }
    return all;
  }

  private List<Schema.Inverse> inverses() {
    List<Schema.Inverse> all = new ArrayList<>();
    if (tokens.take("INVERSE")) {
      while (!tokens.atAny(SECTIONS)) {
        String name = attributeName();
        tokens.expect(":");
        all.add(inverse(name, typeParser.type()));
      }
    }
    return all;
  }

  private Schema.Inverse inverse(String name, ExpressType type) {
    tokens.expect("FOR");
    String by = tokens.word();
    tokens.expect(";");
    if (type instanceof ExpressType.Aggregate a && a.of() instanceof ExpressType.Named of) {
      return new Schema.Inverse(
          name,
          false,
          TypeParser.bound(a.low(), 0),
          TypeParser.bound(a.high(), Integer.MAX_VALUE),
          of.name(),
          by);
    }
    if (type instanceof ExpressType.Named of) {
      return new Schema.Inverse(name, true, 1, 1, of.name(), by);
    }
    throw tokens.unexpected("an entity or a set of one for " + name);
  }

  private List<Schema.Unique> uniques() {
    List<Schema.Unique> all = new ArrayList<>();
    if (tokens.take("UNIQUE")) {
      while (!tokens.atAny(SECTIONS)) {
        String label = tokens.word();
        tokens.expect(":");
        List<Expr> attributes = new ArrayList<>();
        do {
          attributes.add(expressions.expression());
        } while (tokens.take(","));
        tokens.expect(";");
        all.add(new Schema.Unique(label, attributes));
      }
    }
    return all;
  }

  private List<Schema.Where> wheres() {
    List<Schema.Where> all = new ArrayList<>();
    if (tokens.take("WHERE")) {
      while (!tokens.at("END_ENTITY") && !tokens.at("END_TYPE") && !tokens.at("END_RULE")) {
        String label = tokens.word();
        tokens.expect(":");
        all.add(new Schema.Where(label, expressions.expression()));
        tokens.expect(";");
      }
    }
    return all;
  }

  private Function function() {
    String name = tokens.word();
    List<Function.Variable> parameters = new ArrayList<>();
    if (tokens.take("(")) {
      do {
        List<String> names = names();
        ExpressType type = typeParser.type();
        names.forEach(n -> parameters.add(new Function.Variable(n, type, Expr.UNSET)));
      } while (tokens.take(";"));
      tokens.expect(")");
    }
    tokens.expect(":");
    typeParser.type();
    tokens.expect(";");
    List<Function.Variable> locals = locals();
    Statement body = new StatementParser(tokens, expressions).until(Set.of("END_FUNCTION"));
    tokens.expect("END_FUNCTION");
    tokens.expect(";");
    return new Function(name, parameters, locals, body);
  }

  private List<Function.Variable> locals() {
    List<Function.Variable> all = new ArrayList<>();
    if (tokens.take("LOCAL")) {
      while (!tokens.take("END_LOCAL")) {
        List<String> names = names();
        ExpressType type = typeParser.type();
        Expr initial = tokens.take(":=") ? expressions.expression() : Expr.UNSET;
        tokens.expect(";");
        names.forEach(n -> all.add(new Function.Variable(n, type, initial)));
      }
      tokens.expect(";");
    }
    return all;
  }

  private void global() {
    String name = tokens.word();
    tokens.skipThrough(";");
    List<Function.Variable> locals = locals();
    Statement body = new StatementParser(tokens, expressions).until(Set.of("WHERE"));
    globals.add(new Schema.Global(name, new Function(name, List.of(), locals, body), wheres()));
    tokens.expect("END_RULE");
    tokens.expect(";");
  }
}
