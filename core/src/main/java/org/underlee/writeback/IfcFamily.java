package org.underlee.writeback;

import java.util.List;

/**
 * The IFC classes that parts are written as, with their attributes after {@code Tag}. Where IFC2X3
 * has only a wider class for the occurrence, the type says what it is; where its class has no
 * predefined type, the object type says it.
 */
enum IfcFamily {
  PLATE("IfcPlate", "IfcPlate"),
  MEMBER("IfcMember", "IfcMember"),
  COVERING("IfcCovering", "IfcCovering"),
  SEGMENT("IfcPipeSegment", "IfcFlowSegment"),
  FITTING("IfcPipeFitting", "IfcFlowFitting"),
  ACCESSORY("IfcDiscreteAccessory", "IfcDiscreteAccessory"),
  FASTENER("IfcMechanicalFastener", "IfcMechanicalFastener");

  private final String name;
  private final String ifc2x3;

  IfcFamily(String name, String ifc2x3) {
    this.name = name;
    this.ifc2x3 = ifc2x3;
  }

  String occurrence(boolean old) {
    return old ? ifc2x3 : name;
  }

  String type() {
    return name + "Type";
  }

  /** What follows {@code Tag} in an occurrence. */
  List<Value> occurrenceTail(Value predefined, boolean old) {
    if (this == FASTENER) {
      // Nominal diameter and length: the kit does not state them.
      return old
          ? List.of(Value.UNSET, Value.UNSET)
          : List.of(Value.UNSET, Value.UNSET, predefined);
    }
    return old && this != COVERING ? List.of() : List.of(predefined);
  }

  /**
   * What follows {@code ElementType} in a type. The predefined type is given once: by the
   * occurrence, or in IFC2X3 by the type, whose occurrences mostly cannot (concept template "Object
   * Predefined Type": an occurrence has none where its type has one).
   */
  List<Value> typeTail(Value predefinedInIfc2x3, boolean old) {
    Value predefined = old ? predefinedInIfc2x3 : Value.enumeration("NOTDEFINED");
    if (old && (this == ACCESSORY || this == FASTENER)) {
      return List.of();
    }
    return this == FASTENER ? List.of(predefined, Value.UNSET, Value.UNSET) : List.of(predefined);
  }
}
