package org.underlee.schema;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.schema.ExpressValue.Aggregate;
import org.underlee.schema.ExpressValue.Bits;
import org.underlee.schema.ExpressValue.Instance;
import org.underlee.schema.ExpressValue.Item;
import org.underlee.schema.ExpressValue.Logical;
import org.underlee.schema.ExpressValue.Made;
import org.underlee.schema.ExpressValue.Num;
import org.underlee.schema.ExpressValue.Str;
import org.underlee.schema.ExpressValue.Typed;
import org.underlee.schema.ExpressValue.Unset;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** The instances of a file as a schema sees them: what expressions are about. */
final class World {
  /** Instances kept decoded: more than one rule looks at. */
  private static final int KEPT = 1 << 14;

  /** Steps of evaluation after which a rule is given up. */
  private static final long MOST_STEPS = 20_000_000;

  /** Calls within calls: rules of building schemas need a handful. */
  private static final int DEEPEST = 200;

  private final Schema schema;
  private final StepFile file;
  private final Map<Integer, StepInstance> decoded =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, StepInstance> eldest) {
          return size() > KEPT;
        }
      };
  private final Map<String, Aggregate> populations = new HashMap<>();
  private Optional<References> references = Optional.empty();
  private long steps;
  private int depth;

  World(Schema schema, StepFile file) {
    this.schema = schema;
    this.file = file;
  }

  Schema schema() {
    return schema;
  }

  /** Begins a rule. */
  void begin() {
    steps = 0;
    depth = 0;
  }

  void spend() {
    if (++steps > MOST_STEPS) {
      throw new NotExecuted("it takes more than " + MOST_STEPS + " steps");
    }
  }

  void enter() {
    if (++depth > DEEPEST) {
      throw new NotExecuted("it calls itself more than " + DEEPEST + " times");
    }
  }

  void leave() {
    depth--;
  }

  StepInstance decoded(int index) {
    return decoded.computeIfAbsent(index, file::decode);
  }

  /** The entity of an instance or of what was made; empty for other values. */
  Optional<String> entityOf(ExpressValue value) {
    ExpressValue plain = value.plain();
    if (plain instanceof Instance i) {
      return Optional.of(file.keyword(i.index())).filter(schema::isEntity);
    }
    return plain instanceof Made made ? Optional.of(made.entity()) : Optional.empty();
  }

  boolean isA(ExpressValue value, String entity) {
    return entityOf(value).filter(e -> schema.isA(e, entity)).isPresent();
  }

  /** Whether an attribute of this name is there, be it not given. */
  boolean has(ExpressValue value, String name) {
    return entityOf(value)
        .filter(
            e ->
                position(e, name) >= 0
                    || schema.derived(e, name).isPresent()
                    || schema.inverse(e, name).isPresent())
        .isPresent();
  }

  private int position(String entity, String name) {
    List<Schema.Attribute> all = schema.attributes(entity);
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).name().equals(name)) {
        return i;
      }
    }
    return -1;
  }

  /** An explicit, derived or inverse attribute; unset where there is none of this name. */
  ExpressValue attribute(ExpressValue value, String name) {
    Optional<String> entity = entityOf(value);
    if (entity.isEmpty()) {
      return Unset.UNSET;
    }
    Optional<Schema.Derived> derived = schema.derived(entity.get(), name);
    if (derived.isPresent()) {
      return derived(derived.get(), value.plain());
    }
    if (value.plain() instanceof Made made) {
      return made.attributes().getOrDefault(name, Unset.UNSET);
    }
    int index = ((Instance) value.plain()).index();
    int position = position(entity.get(), name);
    if (position >= 0) {
      ExpressType type = schema.attributes(entity.get()).get(position).type();
      return value(type, decoded(index).value(position));
    }
    return schema
        .inverse(entity.get(), name)
        .map(inverse -> inverse(inverse, index))
        .orElse(Unset.UNSET);
  }

  private ExpressValue derived(Schema.Derived attribute, ExpressValue self) {
    enter();
    try {
      return attribute.value().in(Scope.of(this, self));
    } finally {
      leave();
    }
  }

  private ExpressValue inverse(Schema.Inverse inverse, int index) {
    List<ExpressValue> all = referrers(index, inverse.entity(), inverse.by());
    if (inverse.single()) {
      return all.isEmpty() ? Unset.UNSET : all.get(0);
    }
    return Aggregate.of(all);
  }

  /** Those that refer to an instance by one attribute. */
  List<ExpressValue> referrers(int index, String entity, String attribute) {
    if (references.isEmpty()) {
      references = Optional.of(References.of(file));
    }
    int[] found =
        references
            .get()
            .to(
                index,
                referrer -> {
                  String keyword = file.keyword(referrer);
                  return schema.isA(keyword, entity) ? position(keyword, attribute) : -1;
                });
    return Arrays.stream(found).<ExpressValue>mapToObj(Instance::new).toList();
  }

  /**
   * Those that refer to a value by a role.
   *
   * @param role {@code IFC4.IFCRELNESTS.RELATEDOBJECTS}
   */
  Aggregate usedIn(ExpressValue value, String role) {
    String[] parts = role.split("\\.", -1);
    if (!(value.plain() instanceof Instance i) || parts.length != 3) {
      throw new NotExecuted("USEDIN of " + role);
    }
    return Aggregate.of(referrers(i.index(), parts[1], parts[2]));
  }

  /** All instances of an entity. */
  Aggregate all(String entity) {
    return populations.computeIfAbsent(
        entity,
        e -> {
          List<ExpressValue> found = new ArrayList<>();
          for (int i = 0; i < file.count(); i++) {
            if (schema.isA(file.keyword(i), e)) {
              found.add(new Instance(i));
            }
          }
          return Aggregate.of(found);
        });
  }

  /** An entity with its explicit attributes, to be changed or compared. */
  Made copied(ExpressValue value) {
    if (value.plain() instanceof Made made) {
      return made;
    }
    String entity =
        entityOf(value).orElseThrow(() -> new NotExecuted("an attribute of what is no entity"));
    Map<String, ExpressValue> attributes = new LinkedHashMap<>();
    for (Schema.Attribute a : schema.attributes(entity)) {
      attributes.put(a.name(), attribute(value, a.name()));
    }
    return new Made(entity, attributes);
  }

  /** Names of all types that a value is of: supertypes, what its type stands for, selects. */
  Set<String> typesOf(ExpressValue value) {
    Set<String> names = new LinkedHashSet<>();
    if (value instanceof Typed typed) {
      note(typed.type(), names);
    }
    entityOf(value).ifPresent(e -> schema.line(e).forEach(s -> note(s, names)));
    return names;
  }

  private void note(String type, Set<String> names) {
    if (names.add(type)) {
      schema.selectsOf(type).forEach(s -> note(s, names));
      schema
          .type(type)
          .map(Schema.Type::of)
          .filter(ExpressType.Named.class::isInstance)
          .ifPresent(of -> note(((ExpressType.Named) of).name(), names));
    }
  }

  /** A value of the file, of an attribute's type. */
  ExpressValue value(ExpressType type, StepValue value) {
    if (value instanceof StepValue.Reference r) {
      int index = file.find(r.id());
      return index < 0 ? Unset.UNSET : new Instance(index);
    } else if (value instanceof StepValue.Text t) {
      return new Str(t.value());
    } else if (value instanceof StepValue.Numeral n) {
      return new Num(n.value());
    } else if (value instanceof StepValue.Enumeration e) {
      return named(e.name());
    } else if (value instanceof StepValue.ListOf list) {
      return list(type, list.values());
    } else if (value instanceof StepValue.Typed t) {
      return new Typed(t.keyword(), value(new ExpressType.Named(t.keyword()), t.value()));
    }
    return value instanceof StepValue.Binary b ? new Bits(b.digits()) : Unset.UNSET;
  }

  private static ExpressValue named(String name) {
    return switch (name) {
      case "T" -> Logical.TRUE;
      case "F" -> Logical.FALSE;
      case "U" -> Logical.UNKNOWN;
      default -> new Item(name);
    };
  }

  private Aggregate list(ExpressType type, List<StepValue> values) {
    ExpressType declared = type;
    while (declared instanceof ExpressType.Named n && schema.type(n.name()).isPresent()) {
      declared = schema.type(n.name()).get().of();
    }
    boolean known = declared instanceof ExpressType.Aggregate;
    ExpressType of = known ? ((ExpressType.Aggregate) declared).of() : new ExpressType.Generic();
    int low =
        declared instanceof ExpressType.Aggregate a && a.kind().equals("ARRAY")
            ? TypeParser.bound(a.low(), 1)
            : 1;
    return new Aggregate(low, values.stream().map(v -> value(of, v)).toList());
  }
}
