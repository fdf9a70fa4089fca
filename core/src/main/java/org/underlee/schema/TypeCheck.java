package org.underlee.schema;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.underlee.schema.ExpressValue.Logical;
import org.underlee.step.StepFile;
import org.underlee.step.StepValue;

/** Whether a value of a Part 21 file is of a type, with the rules that defined types carry. */
final class TypeCheck {
  /** Selects of selects and lists of lists are no deeper than this in any schema. */
  private static final int DEEPEST = 30;

  private final World world;
  private final StepFile file;
  private final WhereCheck wheres;

  TypeCheck(World world, StepFile file, WhereCheck wheres) {
    this.world = world;
    this.file = file;
    this.wheres = wheres;
  }

  Optional<Misfit> misfit(ExpressType type, StepValue value) {
    return misfit(type, value, 0);
  }

  private Optional<Misfit> misfit(ExpressType type, StepValue value, int depth) {
    if (depth > DEEPEST) {
      return Optional.empty();
    }
    if (type instanceof ExpressType.Aggregate aggregate) {
      return value instanceof StepValue.ListOf list
          ? members(aggregate, list.values(), depth)
          : wrong(type, value);
    }
    if (type instanceof ExpressType.Named named) {
      return named(named.name(), value, depth);
    }
    if (type instanceof ExpressType.Enumeration enumeration) {
      boolean item =
          value instanceof StepValue.Enumeration e && enumeration.items().contains(e.name());
      return item ? Optional.empty() : wrong(type, value);
    }
    if (type instanceof ExpressType.Select select) {
      return chosen(select, value, depth);
    }
    return type instanceof ExpressType.Simple simple ? simple(simple, value) : Optional.empty();
  }

  private Optional<Misfit> wrong(ExpressType type, StepValue value) {
    return wrong(spelled(type), value);
  }

  private static Optional<Misfit> wrong(String type, StepValue value) {
    return Optional.of(new Misfit(SchemaRules.TYPE, "is no " + type + ": " + value.words()));
  }

  private String spelled(ExpressType type) {
    return type instanceof ExpressType.Named n ? world.schema().spelled(n.name()) : type.toString();
  }

  private Optional<Misfit> members(ExpressType.Aggregate type, List<StepValue> values, int depth) {
    int low = TypeParser.bound(type.low(), 0);
    int high = TypeParser.bound(type.high(), Integer.MAX_VALUE);
    boolean array = type.kind().equals("ARRAY");
    int least = array ? high - low + 1 : low;
    int most = array ? least : high;
    if (values.size() < least || values.size() > most) {
      String allowed = most == Integer.MAX_VALUE ? "at least " + least : least + " to " + most;
      return cardinality("has " + values.size() + " members, not " + allowed);
    }
    if (type.distinct() && new HashSet<>(values).size() < values.size()) {
      return cardinality("has a member twice");
    }
    return values.stream()
        .filter(v -> !(type.optional() && v instanceof StepValue.Omitted))
        .flatMap(v -> misfit(type.of(), v, depth + 1).stream())
        .findFirst();
  }

  private static Optional<Misfit> cardinality(String words) {
    return Optional.of(new Misfit(SchemaRules.CARDINALITY, words));
  }

  private Optional<Misfit> named(String name, StepValue value, int depth) {
    if (world.schema().isEntity(name)) {
      return value instanceof StepValue.Reference r
          ? reference(r, name)
          : wrong(world.schema().spelled(name), value);
    }
    Optional<Schema.Type> type = world.schema().type(name);
    if (type.isEmpty()) {
      return wrong(name, value);
    }
    Optional<Misfit> misfit = misfit(type.get().of(), value, depth + 1);
    boolean plain = misfit.isPresent() && misfit.get().rule().equals(SchemaRules.TYPE);
    if (plain && !(type.get().of() instanceof ExpressType.Aggregate)) {
      return wrong(world.schema().spelled(name), value);
    }
    return misfit.or(() -> broken(type.get(), value));
  }

  private Optional<Misfit> broken(Schema.Type type, StepValue value) {
    ExpressValue self = world.value(type.of(), value);
    return type.wheres().stream()
        .filter(w -> wheres.holds(type.name(), w, self) == Logical.FALSE)
        .map(w -> world.schema().spelled(type.name()) + "." + w.label())
        .map(label -> new Misfit(SchemaRules.WHERE, "breaks " + label + ": " + value.words()))
        .findFirst();
  }

  private Optional<Misfit> reference(StepValue.Reference r, String entity) {
    int found = file.find(r.id());
    if (found < 0) {
      return Optional.of(
          new Misfit(SchemaRules.REFERENCE, "refers to #" + r.id() + ", which is not there"));
    }
    String keyword = file.keyword(found);
    return world.schema().isA(keyword, entity)
        ? Optional.empty()
        : Optional.of(
            new Misfit(
                SchemaRules.REFERENCE,
                "is no "
                    + world.schema().spelled(entity)
                    + ": #"
                    + r.id()
                    + " is "
                    + world.schema().spelled(keyword)));
  }

  /** In a select, a value that is no reference says of which type it is. */
  private Optional<Misfit> chosen(ExpressType.Select select, StepValue value, int depth) {
    if (value instanceof StepValue.Reference r && file.find(r.id()) < 0) {
      return reference(r, "");
    }
    Optional<Misfit> nearest = Optional.empty();
    for (String choice : select.of()) {
      Optional<Misfit> misfit = choice(choice, value, depth);
      if (misfit.isEmpty()) {
        return misfit;
      }
      boolean meant = value instanceof StepValue.Typed t && t.keyword().equals(choice);
      nearest = meant ? misfit : nearest;
    }
    return nearest.or(() -> wrong(select, value));
  }

  private Optional<Misfit> choice(String choice, StepValue value, int depth) {
    boolean nested =
        world.schema().type(choice).filter(t -> t.of() instanceof ExpressType.Select).isPresent();
    if (nested || value instanceof StepValue.Reference) {
      return named(choice, value, depth + 1);
    }
    return value instanceof StepValue.Typed t && t.keyword().equals(choice)
        ? named(choice, t.value(), depth + 1)
        : wrong(choice, value);
  }

  private Optional<Misfit> simple(ExpressType.Simple type, StepValue value) {
    boolean fits =
        switch (type.kind()) {
          case "STRING" -> value instanceof StepValue.Text;
          case "REAL" -> value instanceof StepValue.Real;
          case "INTEGER" -> value instanceof StepValue.Int;
          case "NUMBER" -> value instanceof StepValue.Numeral;
          case "BOOLEAN" -> value instanceof StepValue.Enumeration e && isOneOf(e.name(), "TF");
          case "LOGICAL" -> value instanceof StepValue.Enumeration e && isOneOf(e.name(), "TFU");
          default -> value instanceof StepValue.Binary;
        };
    if (!fits) {
      return wrong(type, value);
    }
    if (value instanceof StepValue.Text t && type.width().isPresent()) {
      int length = t.value().codePointCount(0, t.value().length());
      int width = type.width().getAsInt();
      if (length > width || (type.fixed() && length != width)) {
        String words =
            "has " + length + " characters, not " + (type.fixed() ? "" : "at most ") + width;
        return Optional.of(new Misfit(SchemaRules.TYPE, words));
      }
    }
    return Optional.empty();
  }

  private static boolean isOneOf(String name, String letters) {
    return name.length() == 1 && letters.contains(name);
  }
}
