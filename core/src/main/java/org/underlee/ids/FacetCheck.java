package org.underlee.ids;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.ids.PropertyFinder.Given;
import org.underlee.ids.Specification.Cardinality;
import org.underlee.schema.Schema;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** Whether an instance has what a facet asks for (IDS 1.0, facet configurations). */
final class FacetCheck {
  private static final Set<String> WHOLES =
      Set.of(
          "IFCRELAGGREGATES",
          "IFCRELNESTS",
          "IFCRELCONTAINEDINSPATIALSTRUCTURE",
          "IFCRELASSIGNSTOGROUP",
          "IFCRELVOIDSELEMENT",
          "IFCRELFILLSELEMENT");

  private final StepFile file;
  private final Schema schema;
  private final Relationships relationships;
  private final PropertyFinder properties;
  private final UnitSizes units;

  FacetCheck(StepFile file, Schema schema) {
    this.file = file;
    this.schema = schema;
    this.relationships = new Relationships(file);
    this.properties = new PropertyFinder(file, schema, relationships);
    this.units = new UnitSizes(file);
  }

  /** What was found of a facet. */
  enum Answer {
    MET,
    /** Nothing is given that could be wrong. */
    ABSENT,
    WRONG
  }

  boolean fulfils(StepInstance element, Facet facet, Cardinality cardinality) {
    Answer answer = of(element, facet);
    return switch (cardinality) {
      case REQUIRED -> answer == Answer.MET;
      case OPTIONAL -> answer != Answer.WRONG;
      case PROHIBITED -> answer != Answer.MET;
    };
  }

  Answer of(StepInstance element, Facet facet) {
    if (facet instanceof Facet.Entity e) {
      return entity(element, e) ? Answer.MET : Answer.WRONG;
    } else if (facet instanceof Facet.Attribute a) {
      return attribute(element, a);
    } else if (facet instanceof Facet.Property p) {
      return property(element, p);
    } else if (facet instanceof Facet.Classification c) {
      return classification(element, c);
    } else if (facet instanceof Facet.Material m) {
      return material(element, m);
    }
    return partOf(element, (Facet.PartOf) facet);
  }

  private boolean entity(StepInstance element, Facet.Entity facet) {
    return facet.name().allows(element.keyword())
        && facet
            .predefinedType()
            .map(p -> predefinedTypes(element).stream().anyMatch(p::allows))
            .orElse(true);
  }

  /** The predefined type, its own or its type's, and the user's word where it is user-defined. */
  private Set<String> predefinedTypes(StepInstance element) {
    Set<String> own = ownPredefinedTypes(element);
    boolean says = !own.isEmpty() && !own.equals(Set.of("NOTDEFINED"));
    if (says) {
      return own;
    }
    Set<String> all = new LinkedHashSet<>();
    for (long type : relationships.of("IFCRELDEFINESBYTYPE", element.id())) {
      all.addAll(ownPredefinedTypes(file.instance(type)));
    }
    return all.isEmpty() ? own : all;
  }

  private Set<String> ownPredefinedTypes(StepInstance element) {
    Set<String> all = new LinkedHashSet<>();
    named(element, "PredefinedType")
        .filter(StepValue.Enumeration.class::isInstance)
        .map(v -> ((StepValue.Enumeration) v).name())
        .ifPresent(all::add);
    if (all.contains("USERDEFINED")) {
      for (String word : List.of("ObjectType", "ElementType", "ProcessType")) {
        named(element, word)
            .filter(StepValue.Text.class::isInstance)
            .map(v -> ((StepValue.Text) v).value())
            .ifPresent(all::add);
      }
    }
    return all;
  }

  private Optional<StepValue> named(StepInstance element, String attribute) {
    int at = schema.attributeNames(element.keyword()).indexOf(attribute);
    return at < 0 ? Optional.empty() : Optional.of(element.value(at));
  }

  private Answer attribute(StepInstance element, Facet.Attribute facet) {
    List<String> names = schema.attributeNames(element.keyword());
    List<StepValue> given = new ArrayList<>();
    boolean absent = true;
    for (int i = 0; i < names.size(); i++) {
      if (facet.name().allows(names.get(i))) {
        StepValue value = element.value(i);
        absent &= value instanceof StepValue.Omitted;
        if (says(value)) {
          given.add(value);
        }
      }
    }
    if (given.isEmpty()) {
      return absent ? Answer.ABSENT : Answer.WRONG;
    }
    boolean all =
        given.stream().allMatch(v -> facet.value().map(f -> allows(f, v, 1)).orElse(true));
    return all ? Answer.MET : Answer.WRONG;
  }

  /** An empty text or list and an unknown truth say nothing. */
  private static boolean says(StepValue value) {
    if (value instanceof StepValue.Typed t) {
      return says(t.value());
    } else if (value instanceof StepValue.Text t) {
      return !t.value().isEmpty();
    } else if (value instanceof StepValue.ListOf list) {
      return !list.values().isEmpty();
    } else if (value instanceof StepValue.Enumeration e) {
      return !e.name().equals("U");
    }
    return !(value instanceof StepValue.Omitted) && !(value instanceof StepValue.Derived);
  }

  private static boolean allows(IdsValue wanted, StepValue value, double unit) {
    if (value instanceof StepValue.Typed t) {
      return allows(wanted, t.value(), unit);
    } else if (value instanceof StepValue.Text t) {
      return wanted.allows(t.value());
    } else if (value instanceof StepValue.Int n) {
      return wanted.allowsWhole(n.value());
    } else if (value instanceof StepValue.Real n) {
      return wanted.allows(n.value() * unit);
    } else if (value instanceof StepValue.Enumeration e) {
      return switch (e.name()) {
        case "T" -> wanted.allows(true);
        case "F" -> wanted.allows(false);
        default -> wanted.allows(e.name());
      };
    }
    return false;
  }

  private Answer property(StepInstance element, Facet.Property facet) {
    Answer answer = Answer.ABSENT;
    for (Map.Entry<String, Map<String, List<Given>>> set : properties.of(element).entrySet()) {
      if (facet.set().allows(set.getKey())) {
        Answer own = property(set.getValue(), facet);
        if (own != Answer.MET) {
          return own;
        }
        answer = own;
      }
    }
    return answer;
  }

  private Answer property(Map<String, List<Given>> set, Facet.Property facet) {
    Answer answer = Answer.ABSENT;
    for (Map.Entry<String, List<Given>> property : set.entrySet()) {
      if (facet.name().allows(property.getKey())) {
        List<Given> given = property.getValue().stream().filter(g -> says(g.value())).toList();
        if (given.stream().noneMatch(g -> is(g, facet))) {
          boolean absent = property.getValue().isEmpty();
          return absent ? Answer.ABSENT : Answer.WRONG;
        }
        answer = Answer.MET;
      }
    }
    return answer;
  }

  private boolean is(Given given, Facet.Property facet) {
    double unit = given.unit().map(units::of).orElseGet(() -> units.of(given.type()));
    return facet.dataType().map(given.type()::equals).orElse(true)
        && facet.value().map(v -> allows(v, given.value(), unit)).orElse(true);
  }

  private Set<Long> ofItOrItsType(String relationship, StepInstance element) {
    Set<Long> own = relationships.of(relationship, element.id());
    if (!own.isEmpty()) {
      return own;
    }
    Set<Long> all = new LinkedHashSet<>();
    relationships
        .of("IFCRELDEFINESBYTYPE", element.id())
        .forEach(t -> all.addAll(relationships.of(relationship, t)));
    return all;
  }

  private Answer classification(StepInstance element, Facet.Classification facet) {
    Set<Long> own =
        new LinkedHashSet<>(relationships.of("IFCRELASSOCIATESCLASSIFICATION", element.id()));
    relationships
        .of("IFCRELDEFINESBYTYPE", element.id())
        .forEach(t -> own.addAll(relationships.of("IFCRELASSOCIATESCLASSIFICATION", t)));
    boolean met = own.stream().anyMatch(id -> classified(file.instance(id), facet));
    return met ? Answer.MET : own.isEmpty() ? Answer.ABSENT : Answer.WRONG;
  }

  /** A reference matches by its own code or that of what it is within. */
  private boolean classified(StepInstance reference, Facet.Classification facet) {
    Set<String> codes = new LinkedHashSet<>();
    Set<Long> seen = new HashSet<>();
    StepInstance at = reference;
    while (at.keyword().equals("IFCCLASSIFICATIONREFERENCE") && seen.add(at.id())) {
      if (at.value(1) instanceof StepValue.Text code) {
        codes.add(code.value());
      }
      Optional<StepInstance> source = at.optionalFollow(3);
      if (source.isEmpty()) {
        return false;
      }
      at = source.get();
    }
    boolean system =
        named(at, "Name")
            .filter(v -> v instanceof StepValue.Text t && facet.system().allows(t.value()))
            .isPresent();
    return system && facet.value().map(v -> codes.stream().anyMatch(v::allows)).orElse(true);
  }

  private Answer material(StepInstance element, Facet.Material facet) {
    Set<String> names = new LinkedHashSet<>();
    Set<Long> materials = ofItOrItsType("IFCRELASSOCIATESMATERIAL", element);
    materials.forEach(id -> materialNames(file.instance(id), names, new HashSet<>()));
    if (materials.isEmpty()) {
      return Answer.ABSENT;
    }
    boolean met = facet.value().map(v -> names.stream().anyMatch(v::allows)).orElse(true);
    return met ? Answer.MET : Answer.WRONG;
  }

  /** Names and categories of a material, and of all that a set of materials is made of. */
  private void materialNames(StepInstance material, Set<String> into, Set<Long> seen) {
    if (!seen.add(material.id()) || !material.keyword().startsWith("IFCMATERIAL")) {
      return;
    }
    List<String> attributes = schema.attributeNames(material.keyword());
    for (int i = 0; i < attributes.size(); i++) {
      StepValue value = material.value(i);
      String name = attributes.get(i).toUpperCase(Locale.ROOT);
      if (value instanceof StepValue.Text t && (name.endsWith("NAME") || name.equals("CATEGORY"))) {
        into.add(t.value());
      }
      List<StepValue> all = value instanceof StepValue.ListOf l ? l.values() : List.of(value);
      for (StepValue v : all) {
        if (v instanceof StepValue.Reference r) {
          materialNames(file.instance(r.id()), into, seen);
        }
      }
    }
  }

  private Answer partOf(StepInstance element, Facet.PartOf facet) {
    Set<String> ways = facet.relation().map(r -> Set.of(r.split(" ", -1))).orElse(WHOLES);
    Set<Long> wholes = new LinkedHashSet<>();
    ascend(element.id(), ways, wholes);
    boolean met = wholes.stream().anyMatch(w -> entity(file.instance(w), facet.whole()));
    return met ? Answer.MET : wholes.isEmpty() ? Answer.ABSENT : Answer.WRONG;
  }

  private void ascend(long part, Set<String> ways, Set<Long> wholes) {
    for (String way : ways) {
      for (long whole : relationships.of(way, part)) {
        if (wholes.add(whole)) {
          ascend(whole, ways, wholes);
        }
      }
    }
  }
}
