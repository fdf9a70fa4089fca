package org.underlee.writeback;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * Judges every instance of a file by an EXPRESS schema: number of attributes, what is mandatory or
 * derived, references, enumerations, selects, bounds and duplicates of sets, simple types.
 */
final class ExpressJudge {
  private static final Pattern AGGREGATE =
      Pattern.compile("(SET|LIST|BAG|ARRAY) ?\\[ ?(\\d+) ?: ?(\\d+|\\?) ?\\] OF (UNIQUE )?(.*)");
  private static final Pattern SELECT = Pattern.compile("SELECT ?\\((.*)\\)");
  private static final Pattern ENUMERATION = Pattern.compile("ENUMERATION OF ?\\((.*)\\)");

  private final ExpressSchema schema;
  private final StepFile file;
  private final List<String> faults = new ArrayList<>();

  private ExpressJudge(ExpressSchema schema, StepFile file) {
    this.schema = schema;
    this.file = file;
  }

  static List<String> faults(ExpressSchema schema, StepFile file) {
    return faults(schema, file, 0);
  }

  /** Faults of the instances with higher numbers than {@code above}. */
  static List<String> faults(ExpressSchema schema, StepFile file, long above) {
    ExpressJudge judge = new ExpressJudge(schema, file);
    for (int i = 0; i < file.count(); i++) {
      if (file.id(i) > above) {
        judge.instance(file.decode(i));
      }
    }
    return judge.faults;
  }

  private void instance(StepInstance instance) {
    String entity = instance.keyword();
    if (!schema.isInstantiable(entity)) {
      fault(instance, "is not an entity that can be instantiated");
      return;
    }
    List<ExpressSchema.Attribute> attributes = schema.attributes(entity);
    if (attributes.size() != instance.size()) {
      fault(instance, "has " + instance.size() + " attributes, not " + attributes.size());
      return;
    }
    for (int i = 0; i < attributes.size(); i++) {
      attribute(instance, attributes.get(i), instance.value(i));
    }
  }

  private void attribute(StepInstance instance, ExpressSchema.Attribute a, StepValue value) {
    boolean derived = schema.isDerived(instance.keyword(), a.name());
    if (derived != value instanceof StepValue.Derived) {
      fault(instance, a.name() + (derived ? " must be *" : " is * but not derived"));
    } else if (value instanceof StepValue.Omitted) {
      if (!a.optional()) {
        fault(instance, a.name() + " is mandatory");
      }
    } else if (!derived && !fits(a.type(), value)) {
      fault(instance, a.name() + " is no " + a.type() + ": " + value.words());
    }
  }

  private void fault(StepInstance instance, String what) {
    faults.add("#" + instance.id() + "=" + instance.keyword() + " " + what);
  }

  private boolean fits(String type, StepValue value) {
    Matcher aggregate = AGGREGATE.matcher(type);
    if (aggregate.matches()) {
      return value instanceof StepValue.ListOf list && fitsAll(aggregate, list.values());
    }
    if (schema.isEntity(type)) {
      return value instanceof StepValue.Reference r && refersTo(r, type);
    }
    if (schema.type(type).isPresent()) {
      return fitsDefined(schema.type(type).get(), value);
    }
    return fitsSimple(type.replaceAll(" ?\\(.*", ""), value);
  }

  private boolean fitsAll(Matcher aggregate, List<StepValue> values) {
    int most =
        aggregate.group(3).equals("?") ? values.size() : Integer.parseInt(aggregate.group(3));
    boolean distinct = aggregate.group(1).equals("SET") || aggregate.group(4) != null;
    return values.size() >= Integer.parseInt(aggregate.group(2))
        && values.size() <= most
        && (!distinct || new HashSet<>(values).size() == values.size())
        && values.stream().allMatch(v -> fits(aggregate.group(5), v));
  }

  private boolean refersTo(StepValue.Reference r, String entity) {
    int found = file.find(r.id());
    return found >= 0 && schema.isA(file.keyword(found), entity);
  }

  private boolean fitsDefined(String definition, StepValue value) {
    Matcher enumeration = ENUMERATION.matcher(definition);
    if (enumeration.matches()) {
      return value instanceof StepValue.Enumeration e
          && List.of(enumeration.group(1).strip().split(" ?, ?")).contains(e.name());
    }
    Matcher select = SELECT.matcher(definition);
    if (!select.matches()) {
      return fits(definition, value);
    }
    List<String> choices = List.of(select.group(1).strip().split(" ?, ?"));
    return choices.stream().anyMatch(c -> chosen(c, value));
  }

  /** In a select, a value that is no reference says which type it is. */
  private boolean chosen(String choice, StepValue value) {
    boolean nested = schema.type(choice).filter(d -> SELECT.matcher(d).matches()).isPresent();
    if (nested || value instanceof StepValue.Reference) {
      return fits(choice, value);
    }
    return value instanceof StepValue.Typed t
        && t.keyword().equals(choice)
        && fits(choice, t.value());
  }

  private static boolean fitsSimple(String type, StepValue value) {
    return switch (type) {
      case "STRING" -> value instanceof StepValue.Text;
      case "REAL" -> value instanceof StepValue.Real;
      case "INTEGER" -> value instanceof StepValue.Int;
      case "NUMBER" -> value instanceof StepValue.Numeral;
      case "BOOLEAN" -> value instanceof StepValue.Enumeration e && "TF".contains(e.name());
      case "LOGICAL" -> value instanceof StepValue.Enumeration e && "TFU".contains(e.name());
      case "BINARY" -> value instanceof StepValue.Binary;
      default -> throw new IllegalStateException("no such EXPRESS type: " + type);
    };
  }
}
