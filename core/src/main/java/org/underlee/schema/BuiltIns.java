package org.underlee.schema;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.underlee.schema.ExpressValue.Aggregate;
import org.underlee.schema.ExpressValue.Bits;
import org.underlee.schema.ExpressValue.Logical;
import org.underlee.schema.ExpressValue.Num;
import org.underlee.schema.ExpressValue.Str;
import org.underlee.schema.ExpressValue.Unset;

/** The functions of the language (ISO 10303-11, clause 15) that building schemas use. */
final class BuiltIns {
  private BuiltIns() {}

  static ExpressValue call(String name, List<ExpressValue> arguments, World world) {
    ExpressValue a = argument(arguments, 0);
    return switch (name) {
      case "EXISTS" -> Logical.of(!a.isUnset());
      case "NVL" -> a.isUnset() ? argument(arguments, 1) : a;
      case "SIZEOF" -> a instanceof Aggregate l ? new Num(l.values().size()) : Unset.UNSET;
      case "HIINDEX", "HIBOUND" -> a instanceof Aggregate l ? new Num(l.high()) : Unset.UNSET;
      case "LOINDEX", "LOBOUND" -> a instanceof Aggregate l ? new Num(l.low()) : Unset.UNSET;
      case "LENGTH" -> a instanceof Str s ? new Num(s.value().length()) : Unset.UNSET;
      case "BLENGTH" -> a instanceof Bits b ? new Num(length(b.digits())) : Unset.UNSET;
      case "TYPEOF" -> typesOf(arguments.get(0), world);
      case "USEDIN" -> world.usedIn(a, argument(arguments, 1) instanceof Str s ? s.value() : "");
      case "VALUE_UNIQUE" -> unique(a);
      case "ODD" -> a instanceof Num n ? Logical.of(n.value() % 2 != 0) : Logical.UNKNOWN;
      default -> number(name, a);
    };
  }

  private static ExpressValue argument(List<ExpressValue> arguments, int i) {
    return i < arguments.size() ? arguments.get(i).plain() : Unset.UNSET;
  }

  /** The first digit says how many of the first bits are not used. */
  private static int length(String digits) {
    return digits.isEmpty() ? 0 : 4 * (digits.length() - 1) - (digits.charAt(0) - '0');
  }

  private static ExpressValue typesOf(ExpressValue value, World world) {
    if (value.isUnset()) {
      return Aggregate.of(List.of());
    }
    Set<String> names = new TreeSet<>(world.typesOf(value));
    String prefix = world.schema().name() + ".";
    return Aggregate.of(names.stream().<ExpressValue>map(n -> new Str(prefix + n)).toList());
  }

  private static ExpressValue unique(ExpressValue a) {
    return a instanceof Aggregate l
        ? Logical.of(
            l.values().stream().map(ExpressValue::plain).distinct().count() == l.values().size())
        : Logical.UNKNOWN;
  }

  private static ExpressValue number(String name, ExpressValue a) {
    double x = a instanceof Num n ? n.value() : Double.NaN;
    double result =
        switch (name) {
          case "ABS" -> Math.abs(x);
          case "SQRT" -> Math.sqrt(x);
          case "SIN" -> Math.sin(x);
          case "COS" -> Math.cos(x);
          case "TAN" -> Math.tan(x);
          case "ACOS" -> Math.acos(x);
          case "ASIN" -> Math.asin(x);
          case "EXP" -> Math.exp(x);
          case "LOG" -> Math.log(x);
          default -> throw new NotExecuted("there is no function " + name);
        };
    return Double.isNaN(result) ? Unset.UNSET : new Num(result);
  }
}
