package org.underlee.run;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.ifc.IfcModel;

/**
 * The map of a model in IFC2X3, which has no class for it: property sets {@code
 * ePset_MapConversion} and {@code ePset_ProjectedCRS} of the site or the building, with the
 * properties that the attributes of the later classes became (buildingSMART, "User Guide for
 * Geo-referencing in IFC", 2020). Writers differ in upper and lower case.
 */
record MapProperties(Map<String, String> conversion, Map<String, String> system) {
  static Optional<MapProperties> of(IfcModel model) {
    for (String place : new String[] {"IFCSITE", "IFCBUILDING"}) {
      for (int index : model.step().ofKeyword(place)) {
        Map<String, Map<String, String>> sets = model.properties(model.step().id(index));
        Map<String, String> conversion = set(sets, "epset_mapconversion");
        if (!conversion.isEmpty()) {
          return Optional.of(new MapProperties(conversion, set(sets, "epset_projectedcrs")));
        }
      }
    }
    return Optional.empty();
  }

  private static Map<String, String> set(Map<String, Map<String, String>> sets, String name) {
    Map<String, String> found = new LinkedHashMap<>();
    sets.forEach(
        (set, properties) -> {
          if (set.equalsIgnoreCase(name)) {
            properties.forEach((k, v) -> found.putIfAbsent(k.toLowerCase(Locale.ROOT), v));
          }
        });
    return found;
  }

  /** A number of the conversion; empty where there is none or none that can be read. */
  OptionalDouble number(String property) {
    try {
      String text = conversion.getOrDefault(property, "");
      return text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  /** What the map's coordinate reference system is called, or empty. */
  String name() {
    return system.getOrDefault("name", conversion.getOrDefault("targetcrs", ""));
  }

  /** Metres for a unit of the map, where that is said. */
  OptionalDouble metresPerMapUnit() {
    String unit = system.getOrDefault("mapunit", "").toUpperCase(Locale.ROOT);
    if (unit.contains("MILLI")) {
      return OptionalDouble.of(0.001);
    } else if (unit.startsWith("MET")) {
      return OptionalDouble.of(1);
    }
    return unit.contains("FOOT") ? OptionalDouble.of(0.3048) : OptionalDouble.empty();
  }
}
