package org.underlee.schema;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import org.underlee.schema.ExpressValue.Instance;
import org.underlee.schema.ExpressValue.Logical;
import org.underlee.schema.ExpressValue.Unset;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * Checks instances of a Part 21 file by an EXPRESS schema: entities, number and types of
 * attributes, what must be given, references, bounds and duplicates of aggregates, uniqueness,
 * inverse cardinality, WHERE rules of entities and types, and rules about the whole file. A WHERE
 * rule that comes out as unknown is not broken, as ISO 10303-11 says. What cannot be executed is
 * named.
 */
public final class SchemaCheck {
  private final Schema schema;
  private final StepFile file;
  private final IntPredicate judged;
  private final World world;
  private final WhereCheck wheres;
  private final TypeCheck types;
  private final Faults faults;

  private SchemaCheck(Schema schema, StepFile file, IntPredicate judged) {
    this.schema = schema;
    this.file = file;
    this.judged = judged;
    this.world = new World(schema, file);
    this.wheres = new WhereCheck(world);
    this.types = new TypeCheck(world, file, wheres);
    this.faults = new Faults(file);
  }

  /** Checks every instance. */
  public static SchemaReport of(Schema schema, StepFile file) {
    return of(schema, file, i -> true);
  }

  /**
   * Checks some instances, and how the others refer to them.
   *
   * @param judged by index in the file
   */
  public static SchemaReport of(Schema schema, StepFile file, IntPredicate judged) {
    return new SchemaCheck(schema, file, judged).report();
  }

  private SchemaReport report() {
    if (!file.schema().equals(schema.name())) {
      faults.add(
          SchemaRules.NAME,
          file.name(),
          "says it follows \"" + file.schema() + "\", not " + schema.name());
    }
    int instances = 0;
    for (int i = 0; i < file.count(); i++) {
      if (judged.test(i)) {
        instances++;
        instance(i);
      }
    }
    schema.entities().stream().sorted().forEach(this::uniques);
    schema.globals().forEach(this::global);
    wheres
        .notExecuted()
        .forEach(
            (rule, why) -> faults.add(SchemaRules.NOT_EXECUTED, rule, "was not executed: " + why));
    return new SchemaReport(schema.name(), instances, wheres.executed(), faults.findings());
  }

  private void instance(int index) {
    String entity = file.keyword(index);
    String spelled = schema.spelled(entity);
    if (!schema.isEntity(entity)) {
      String words =
          entity.isEmpty()
              ? "is written as several entities at once"
              : "is no entity of " + schema.name();
      faults.add(SchemaRules.ENTITY, entity.isEmpty() ? "An instance" : spelled, words, index);
      return;
    }
    if (schema.entity(entity).isAbstract()) {
      faults.add(SchemaRules.ENTITY, spelled, "is abstract", index);
      return;
    }
    StepInstance instance = world.decoded(index);
    List<Schema.Attribute> attributes = schema.attributes(entity);
    if (attributes.size() != instance.size()) {
      faults.add(
          SchemaRules.ATTRIBUTES,
          spelled,
          "has " + instance.size() + " attributes, not " + attributes.size(),
          index);
      return;
    }
    for (int i = 0; i < attributes.size(); i++) {
      attribute(index, entity, attributes.get(i), instance.value(i));
    }
    for (String of : schema.line(entity)) {
      inverses(index, spelled, schema.entity(of));
      wheres(index, spelled, schema.entity(of));
    }
  }

  private void attribute(int index, String entity, Schema.Attribute a, StepValue value) {
    String subject = schema.spelled(entity) + "." + schema.spelled(a.name());
    boolean derived = schema.derived(entity, a.name()).isPresent();
    if (derived != value instanceof StepValue.Derived) {
      String words = derived ? "must be *, since it is derived" : "is *, but not derived";
      faults.add(SchemaRules.TYPE, subject, words, index);
    } else if (value instanceof StepValue.Omitted) {
      if (!a.optional()) {
        faults.add(SchemaRules.MISSING, subject, "must be given", index);
      }
    } else if (!derived) {
      types.misfit(a.type(), value).ifPresent(m -> faults.add(m.rule(), subject, m.words(), index));
    }
  }

  private void inverses(int index, String spelled, Schema.Entity of) {
    for (Schema.Inverse inverse : of.inverses()) {
      if (inverse.least() == 0 && inverse.most() == Integer.MAX_VALUE) {
        continue;
      }
      int count = world.referrers(index, inverse.entity(), inverse.by()).size();
      if (count < inverse.least() || count > inverse.most()) {
        String words =
            count
                + " "
                + schema.spelled(inverse.entity())
                + " refer to it, not "
                + inverse.least()
                + (inverse.most() == Integer.MAX_VALUE ? " or more" : " to " + inverse.most());
        faults.add(
            SchemaRules.INVERSE,
            spelled + "." + schema.spelled(inverse.name()) + ":",
            words,
            index);
      }
    }
  }

  private void wheres(int index, String spelled, Schema.Entity of) {
    for (Schema.Where rule : of.wheres()) {
      if (wheres.holds(of.name(), rule, new Instance(index)) == Logical.FALSE) {
        String label = schema.spelled(of.name()) + "." + schema.spelled(rule.label());
        faults.add(SchemaRules.WHERE, spelled + " breaks " + label, "", index);
      }
    }
  }

  private void uniques(String entity) {
    for (Schema.Unique unique : schema.entity(entity).uniques()) {
      Map<List<ExpressValue>, Integer> first = new HashMap<>();
      Set<Integer> told = new HashSet<>();
      for (ExpressValue each : world.all(entity).values()) {
        int index = ((Instance) each).index();
        Scope scope = Scope.of(world, each);
        List<ExpressValue> key = unique.attributes().stream().map(a -> a.in(scope)).toList();
        Optional<Integer> other = Optional.ofNullable(first.putIfAbsent(key, index));
        if (key.stream().noneMatch(ExpressValue::isUnset)
            && other.isPresent()
            && (judged.test(index) || judged.test(other.get()))
            && told.add(index)) {
          String label = schema.spelled(entity) + "." + schema.spelled(unique.label());
          faults.add(
              SchemaRules.UNIQUE,
              label,
              "is broken: #" + file.id(other.get()) + " has the same value",
              index);
        }
      }
    }
  }

  private void global(Schema.Global rule) {
    world.begin();
    Scope scope = Scope.of(world, Unset.UNSET);
    try {
      for (Function.Variable local : rule.as().locals()) {
        scope.declare(local.name(), local.type(), local.initial().in(scope));
      }
      rule.as().body().run(scope);
    } catch (NotExecuted e) {
      faults.add(
          SchemaRules.NOT_EXECUTED,
          schema.spelled(rule.name()),
          "was not executed: " + e.getMessage());
      return;
    }
    for (Schema.Where where : rule.wheres()) {
      if (wheres.holds(rule.name(), where, scope) == Logical.FALSE) {
        faults.add(
            SchemaRules.WHERE, schema.spelled(rule.name()) + "." + where.label(), "does not hold");
      }
    }
  }
}
