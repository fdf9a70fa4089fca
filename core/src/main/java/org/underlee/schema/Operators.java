package org.underlee.schema;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.underlee.schema.ExpressValue.Aggregate;
import org.underlee.schema.ExpressValue.Instance;
import org.underlee.schema.ExpressValue.Logical;
import org.underlee.schema.ExpressValue.Made;
import org.underlee.schema.ExpressValue.Num;
import org.underlee.schema.ExpressValue.Str;
import org.underlee.schema.ExpressValue.Unset;

/** The operators of ISO 10303-11, clause 12. An operand that is not given makes it unknown. */
final class Operators {
  private static final Set<String> RELATIONS = Set.of("<", ">", "<=", ">=");

  /** Instances that refer to each other are compared no deeper than this. */
  private static final int DEEPEST = 40;

  private Operators() {}

  static ExpressValue apply(String operator, ExpressValue left, ExpressValue right, World world) {
    ExpressValue a = left.plain();
    ExpressValue b = right.plain();
    return switch (operator) {
      case "AND" -> a.logical().and(b.logical());
      case "OR" -> a.logical().or(b.logical());
      case "XOR" -> xor(a.logical(), b.logical());
      case "=" -> equal(a, b, world);
      case "<>" -> equal(a, b, world).not();
      case ":=:" -> same(a, b);
      case ":<>:" -> same(a, b).not();
      case "IN" -> in(a, b, world);
      case "LIKE" -> like(a, b);
      case "||" -> joined(a, b, world);
      default ->
          RELATIONS.contains(operator)
              ? ordered(operator, a, b, world)
              : sum(operator, a, b, world);
    };
  }

  private static Logical xor(Logical a, Logical b) {
    return a.and(b.not()).or(a.not().and(b));
  }

  static Logical equal(ExpressValue a, ExpressValue b, World world) {
    return equal(a.plain(), b.plain(), world, DEEPEST);
  }

  private static Logical equal(ExpressValue a, ExpressValue b, World world, int depth) {
    world.spend();
    if (a.isUnset() || b.isUnset() || depth == 0) {
      return Logical.UNKNOWN;
    }
    if (a instanceof Aggregate x && b instanceof Aggregate y) {
      return equalLists(x.values(), y.values(), world, depth);
    }
    if (a.equals(b)) {
      return a == Logical.UNKNOWN ? Logical.UNKNOWN : Logical.TRUE;
    }
    boolean entities = isEntity(a) && isEntity(b);
    return entities ? equalEntities(a, b, world, depth) : Logical.FALSE;
  }

  private static boolean isEntity(ExpressValue v) {
    return v instanceof Instance || v instanceof Made;
  }

  private static Logical equalLists(
      List<ExpressValue> a, List<ExpressValue> b, World world, int depth) {
    if (a.size() != b.size()) {
      return Logical.FALSE;
    }
    Logical all = Logical.TRUE;
    for (int i = 0; i < a.size() && all != Logical.FALSE; i++) {
      all = all.and(equal(a.get(i).plain(), b.get(i).plain(), world, depth - 1));
    }
    return all;
  }

  private static Logical equalEntities(ExpressValue a, ExpressValue b, World world, int depth) {
    Made x = world.copied(a);
    Made y = world.copied(b);
    if (!x.entity().equals(y.entity())) {
      return Logical.FALSE;
    }
    Logical all = Logical.TRUE;
    for (Schema.Attribute attribute : world.schema().attributes(x.entity())) {
      ExpressValue p = x.attributes().getOrDefault(attribute.name(), Unset.UNSET).plain();
      ExpressValue q = y.attributes().getOrDefault(attribute.name(), Unset.UNSET).plain();
      if (!p.isUnset() || !q.isUnset()) {
        all = all.and(equal(p, q, world, depth - 1));
      }
      if (all == Logical.FALSE) {
        return all;
      }
    }
    return all;
  }

  private static Logical same(ExpressValue a, ExpressValue b) {
    return a.isUnset() || b.isUnset() ? Logical.UNKNOWN : Logical.of(a.equals(b));
  }

  private static Logical in(ExpressValue a, ExpressValue b, World world) {
    if (a.isUnset() || !(b instanceof Aggregate all)) {
      return Logical.UNKNOWN;
    }
    for (ExpressValue each : all.values()) {
      ExpressValue v = each.plain();
      boolean there = isEntity(a) ? same(a, v).isTrue() : equal(a, v, world).isTrue();
      if (there) {
        return Logical.TRUE;
      }
    }
    return Logical.FALSE;
  }

  /** {@code @} any letter, {@code #} any digit, {@code ?} any character, {@code *} the rest. */
  private static Logical like(ExpressValue a, ExpressValue b) {
    if (!(a instanceof Str text) || !(b instanceof Str pattern)) {
      return Logical.UNKNOWN;
    }
    StringBuilder regex = new StringBuilder();
    for (char c : pattern.value().toCharArray()) {
      regex.append(
          switch (c) {
            case '@' -> "[A-Za-z]";
            case '#' -> "[0-9]";
            case '?' -> ".";
            case '*', '&' -> ".*";
            default -> Pattern.quote("" + c);
          });
    }
    return Logical.of(Pattern.compile(regex.toString()).matcher(text.value()).matches());
  }

  private static ExpressValue joined(ExpressValue a, ExpressValue b, World world) {
    if (!isEntity(a) || !isEntity(b)) {
      return Unset.UNSET;
    }
    Made x = world.copied(a);
    Made y = world.copied(b);
    Map<String, ExpressValue> all = new LinkedHashMap<>(x.attributes());
    all.putAll(y.attributes());
    String entity = world.schema().isA(x.entity(), y.entity()) ? x.entity() : y.entity();
    return new Made(entity, all);
  }

  private static Logical ordered(String sign, ExpressValue a, ExpressValue b, World world) {
    if (a instanceof Aggregate x && b instanceof Aggregate y) {
      return sign.equals("<=") ? within(x, y, world) : within(y, x, world);
    }
    int order;
    if (a instanceof Num x && b instanceof Num y) {
      order = Double.compare(x.value() + 0.0, y.value() + 0.0);
    } else if (a instanceof Str x && b instanceof Str y) {
      order = x.value().compareTo(y.value());
    } else {
      return Logical.UNKNOWN;
    }
    return Logical.of(
        switch (sign) {
          case "<" -> order < 0;
          case ">" -> order > 0;
          case "<=" -> order <= 0;
          default -> order >= 0;
        });
  }

  private static Logical within(Aggregate a, Aggregate b, World world) {
    return Logical.of(a.values().stream().allMatch(v -> in(v.plain(), b, world).isTrue()));
  }

  private static ExpressValue sum(String sign, ExpressValue a, ExpressValue b, World world) {
    if (a instanceof Num x && b instanceof Num y) {
      return new Num(number(sign, x.value(), y.value()));
    }
    if (a instanceof Str x && b instanceof Str y && sign.equals("+")) {
      return new Str(x.value() + y.value());
    }
    if (a instanceof Aggregate || b instanceof Aggregate) {
      return lists(sign, a, b, world);
    }
    return Unset.UNSET;
  }

  private static double number(String sign, double a, double b) {
    return switch (sign) {
      case "+" -> a + b;
      case "-" -> a - b;
      case "*" -> a * b;
      case "/" -> a / b;
      case "**" -> Math.pow(a, b);
      case "DIV" -> (double) (long) (a / b);
      case "MOD" -> a - b * Math.floor(a / b);
      default -> throw new NotExecuted("the operator " + sign);
    };
  }

  /** Union, difference and intersection; a set drops what it has twice where it is assigned. */
  private static ExpressValue lists(String sign, ExpressValue a, ExpressValue b, World world) {
    List<ExpressValue> left =
        a instanceof Aggregate x ? x.values() : a.isUnset() ? List.of() : List.of(a);
    List<ExpressValue> right =
        b instanceof Aggregate y ? y.values() : b.isUnset() ? List.of() : List.of(b);
    Aggregate other = Aggregate.of(right);
    List<ExpressValue> result = new ArrayList<>();
    switch (sign) {
      case "+" -> {
        result.addAll(left);
        result.addAll(right);
      }
      case "-" ->
          left.stream().filter(v -> !in(v.plain(), other, world).isTrue()).forEach(result::add);
      case "*" ->
          left.stream().filter(v -> in(v.plain(), other, world).isTrue()).forEach(result::add);
      default -> throw new NotExecuted("the operator " + sign + " on lists");
    }
    return Aggregate.of(result);
  }
}
