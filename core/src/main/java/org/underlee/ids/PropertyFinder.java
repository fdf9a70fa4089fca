package org.underlee.ids;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.schema.Schema;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** Properties and quantities of an element, its own over those of its type. */
final class PropertyFinder {
  /**
   * A value of a property.
   *
   * @param type its defined type, in upper case, or empty
   * @param unit that the property itself names, else the project's
   */
  record Given(String type, StepValue value, Optional<StepInstance> unit) {}

  private final StepFile file;
  private final Schema schema;
  private final Relationships relationships;

  PropertyFinder(StepFile file, Schema schema, Relationships relationships) {
    this.file = file;
    this.schema = schema;
    this.relationships = relationships;
  }

  /** Set name → property name → values; a property without a value has none. */
  Map<String, Map<String, List<Given>>> of(StepInstance element) {
    Map<String, Map<String, List<Given>>> sets = new LinkedHashMap<>();
    relationships.of("IFCRELDEFINESBYPROPERTIES", element.id()).forEach(s -> add(s, sets));
    relationships.of("IFCMATERIALPROPERTIES", element.id()).forEach(s -> add(s, sets));
    relationships.of("IFCPROFILEPROPERTIES", element.id()).forEach(s -> add(s, sets));
    for (long type : relationships.of("IFCRELDEFINESBYTYPE", element.id())) {
      typeSets(file.instance(type), sets);
    }
    typeSets(element, sets);
    return sets;
  }

  private void typeSets(StepInstance type, Map<String, Map<String, List<Given>>> sets) {
    if (schema.isA(type.keyword(), "IFCTYPEOBJECT")) {
      for (StepValue v : listed(type.value(5))) {
        if (v instanceof StepValue.Reference r) {
          add(r.id(), sets);
        }
      }
    }
  }

  private static List<StepValue> listed(StepValue value) {
    return value instanceof StepValue.ListOf list ? list.values() : List.of();
  }

  private void add(long id, Map<String, Map<String, List<Given>>> sets) {
    StepInstance set = file.instance(id);
    int name = schema.isA(set.keyword(), "IFCROOT") ? 2 : 0;
    if (!(set.value(name) instanceof StepValue.Text called)) {
      return;
    }
    Map<String, List<Given>> properties =
        sets.computeIfAbsent(called.value(), k -> new LinkedHashMap<>());
    switch (set.keyword()) {
      case "IFCPROPERTYSET" -> members(set, 4, properties);
      case "IFCELEMENTQUANTITY" -> members(set, 5, properties);
      case "IFCMATERIALPROPERTIES", "IFCPROFILEPROPERTIES" -> members(set, 2, properties);
      default -> attributes(set, properties);
    }
  }

  private void members(StepInstance set, int at, Map<String, List<Given>> into) {
    for (StepValue v : listed(set.value(at))) {
      if (v instanceof StepValue.Reference r) {
        StepInstance p = file.instance(r.id());
        if (p.value(0) instanceof StepValue.Text name) {
          into.putIfAbsent(name.value(), values(p));
        }
      }
    }
  }

  /** Sets whose properties the standard fixes as attributes. */
  private void attributes(StepInstance set, Map<String, List<Given>> into) {
    List<String> names = schema.attributeNames(set.keyword());
    for (int i = 4; i < names.size(); i++) {
      String type = schema.typeOf(set.keyword(), i).orElse("");
      into.putIfAbsent(names.get(i), given(type, set.value(i), Optional.empty()));
    }
  }

  private List<Given> values(StepInstance p) {
    List<Given> all = new ArrayList<>();
    switch (p.keyword()) {
      case "IFCPROPERTYSINGLEVALUE" -> all.addAll(given("", p.value(2), unit(p, 3)));
      case "IFCPROPERTYENUMERATEDVALUE", "IFCPROPERTYLISTVALUE" ->
          listed(p.value(2)).forEach(v -> all.addAll(given("", v, unit(p, 3))));
      case "IFCPROPERTYBOUNDEDVALUE" -> {
        all.addAll(given("", p.value(2), unit(p, 4)));
        all.addAll(given("", p.value(3), unit(p, 4)));
        all.addAll(given("", p.value(5), unit(p, 4)));
      }
      case "IFCPROPERTYTABLEVALUE" -> {
        listed(p.value(2)).forEach(v -> all.addAll(given("", v, unit(p, 5))));
        listed(p.value(3)).forEach(v -> all.addAll(given("", v, unit(p, 6))));
      }
      default -> {
        if (schema.isA(p.keyword(), "IFCPHYSICALSIMPLEQUANTITY")) {
          all.addAll(given(schema.typeOf(p.keyword(), 3).orElse(""), p.value(3), unit(p, 2)));
        }
      }
    }
    return all;
  }

  private static Optional<StepInstance> unit(StepInstance p, int at) {
    // The bounded value of IFC2X3 ends before a set point; what is there is never a unit.
    return p.value(at) instanceof StepValue.Reference ? p.optionalFollow(at) : Optional.empty();
  }

  private static List<Given> given(String type, StepValue value, Optional<StepInstance> unit) {
    if (value instanceof StepValue.Omitted || value instanceof StepValue.Derived) {
      return List.of();
    }
    return value instanceof StepValue.Typed t
        ? List.of(new Given(t.keyword(), t.value(), unit))
        : List.of(new Given(type, value, unit));
  }
}
