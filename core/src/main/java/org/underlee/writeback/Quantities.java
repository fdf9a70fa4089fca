package org.underlee.writeback;

import java.util.OptionalDouble;

/** Writes physical quantities: from SI to the model's units, or with a unit of their own. */
final class Quantities {
  private static final SiUnit SQUARE_METRE = SiUnit.of("AREAUNIT", "SQUARE_METRE");
  private static final SiUnit CUBIC_METRE = SiUnit.of("VOLUMEUNIT", "CUBIC_METRE");
  private static final SiUnit KILOGRAM =
      new SiUnit(
          Value.enumeration("MASSUNIT"), Value.enumeration("KILO"), Value.enumeration("GRAM"));

  /** The attributes of an IfcSIUnit. */
  private record SiUnit(Value type, Value prefix, Value name) {
    static SiUnit of(String type, String name) {
      return new SiUnit(Value.enumeration(type), Value.UNSET, Value.enumeration(name));
    }
  }

  private final Draft draft;
  private final ModelUnits units;

  Quantities(Draft draft) {
    this.draft = draft;
    this.units = draft.host().units();
  }

  Value count(String name, long pieces) {
    return add("IfcQuantityCount", name, Value.UNSET, Value.integer(pieces));
  }

  Value length(String name, double metres) {
    return add("IfcQuantityLength", name, Value.UNSET, units.length(metres));
  }

  Value area(String name, double squareMetres) {
    return measure("IfcQuantityArea", name, squareMetres, units.squareMetre(), SQUARE_METRE);
  }

  Value volume(String name, double cubicMetres) {
    return measure("IfcQuantityVolume", name, cubicMetres, units.cubicMetre(), CUBIC_METRE);
  }

  Value weight(String name, double kilograms) {
    return measure("IfcQuantityWeight", name, kilograms, units.kilogram(), KILOGRAM);
  }

  private Value measure(
      String entity, String name, double si, OptionalDouble assigned, SiUnit own) {
    Value unit = assigned.isPresent() ? Value.UNSET : siUnit(own);
    return add(entity, name, unit, ModelUnits.rounded(si / assigned.orElse(1)));
  }

  private Value siUnit(SiUnit si) {
    return draft.out().shared("IfcSIUnit", Value.DERIVED, si.type, si.prefix, si.name);
  }

  private Value add(String entity, String name, Value unit, Value value) {
    Value label = Value.label(name);
    // Later schemas end with a formula.
    return draft.ifc2x3()
        ? draft.out().add(entity, label, Value.UNSET, unit, value)
        : draft.out().add(entity, label, Value.UNSET, unit, value, Value.UNSET);
  }
}
