package org.underlee.ifc;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** Property sets of elements with those of their types; only properties of one simple value. */
final class PropertySets {
  private final StepFile step;
  private final Relations relations;

  PropertySets(StepFile step, Relations relations) {
    this.step = step;
    this.relations = relations;
  }

  /** Set name → property name → value as text; the element's own value before its type's. */
  Map<String, Map<String, String>> of(long element) {
    Map<String, Map<String, String>> sets = new LinkedHashMap<>();
    for (long set : relations.propertySets(element)) {
      add(set, sets);
    }
    OptionalLong type = relations.type(element);
    if (type.isPresent()) {
      for (long set : step.instance(type.getAsLong()).refs(5)) {
        add(set, sets);
      }
    }
    sets.replaceAll((name, properties) -> Collections.unmodifiableMap(properties));
    return Collections.unmodifiableMap(sets);
  }

  private void add(long id, Map<String, Map<String, String>> sets) {
    StepInstance set = step.instance(id);
    if (!set.keyword().equals("IFCPROPERTYSET")) {
      return;
    }
    Map<String, String> properties =
        sets.computeIfAbsent(set.optionalText(2).orElse(""), name -> new LinkedHashMap<>());
    for (StepInstance property : set.followAll(4)) {
      if (property.keyword().equals("IFCPROPERTYSINGLEVALUE")) {
        words(property.value(2)).ifPresent(v -> properties.putIfAbsent(property.text(0), v));
      }
    }
  }

  private static Optional<String> words(StepValue value) {
    if (value instanceof StepValue.Typed t) {
      return words(t.value());
    } else if (value instanceof StepValue.Text t) {
      return Optional.of(t.value());
    } else if (value instanceof StepValue.Numeral n) {
      return Optional.of(n.raw());
    } else if (value instanceof StepValue.Enumeration e) {
      return Optional.of(logical(e.name()));
    }
    return Optional.empty();
  }

  private static String logical(String name) {
    return switch (name) {
      case "T" -> "TRUE";
      case "F" -> "FALSE";
      case "U" -> "UNKNOWN";
      default -> name;
    };
  }
}
