package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.geom.Vec3;
import org.underlee.ifc.IfcModel;

/** The property sets that stand in for a map conversion where the schema has none. */
final class MapProperties {
  private static final String CONVERSION = "ePset_MapConversion";
  private static final String SYSTEM = "ePset_ProjectedCRS";

  private final long holder;
  private final Map<String, String> values;
  private final Map<String, String> system;

  /** Names are written with any capitals. */
  private MapProperties(long holder, Map<String, Map<String, String>> sets) {
    this.holder = holder;
    values = anyCase(sets.getOrDefault(CONVERSION, Map.of()));
    system = anyCase(sets.getOrDefault(SYSTEM, Map.of()));
  }

  private static <T> Map<String, T> anyCase(Map<String, T> map) {
    Map<String, T> any = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
    any.putAll(map);
    return any;
  }

  /**
   * What the site, or else the project, says.
   *
   * @throws InputException when it is no number where one should be
   */
  static Optional<Georeference> of(IfcModel model) {
    for (long holder : holders(model)) {
      MapProperties own = new MapProperties(holder, anyCase(model.properties(holder)));
      if (!own.values.isEmpty()) {
        return Optional.of(own.read(model.units().metresPerLengthUnit()));
      }
    }
    return Optional.empty();
  }

  private static List<Long> holders(IfcModel model) {
    List<Long> all = new ArrayList<>();
    for (int site : model.step().ofKeyword("IFCSITE")) {
      all.add(model.step().id(site));
    }
    all.add(model.projectId());
    return all;
  }

  private Georeference read(double metresPerUnit) {
    double metres = metresPerMapUnit(metresPerUnit);
    Vec3 origin =
        new Vec3(number("Eastings", 0), number("Northings", 0), number("OrthogonalHeight", 0));
    return Georeference.of(
        origin.times(metres),
        number("XAxisAbscissa", 1),
        number("XAxisOrdinate", 0),
        number("Scale", 1) * metres / metresPerUnit,
        system.getOrDefault("Name", ""));
  }

  /** The map's unit is a word here; without one, numbers are in the model's own unit. */
  private double metresPerMapUnit(double metresPerUnit) {
    return switch (system.getOrDefault("MapUnit", "").toUpperCase(Locale.ROOT)) {
      case "METRE", "METER", "M" -> 1;
      case "MILLIMETRE", "MILLIMETER", "MM" -> 0.001;
      default -> metresPerUnit;
    };
  }

  private double number(String name, double otherwise) {
    String text = values.getOrDefault(name, "");
    if (text.isBlank()) {
      return otherwise;
    }
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException e) {
      throw new InputException(
          Place.NOWHERE.atInstance(holder),
          CONVERSION + ": " + name + " should be a number but is \"" + text + "\"",
          "Correct it in the program that the model comes from, or leave the property set out.");
    }
  }
}
