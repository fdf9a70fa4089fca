package org.underlee.samples;

import java.util.Locale;

/**
 * The class an element is written as.
 *
 * @param name in the standard's spelling
 * @param predefinedType without dots; empty where the schema or the class has none
 */
record ElementClass(String name, String predefinedType) {
  private static final ElementClass PROXY =
      new ElementClass("IfcBuildingElementProxy", "NOTDEFINED");

  static ElementClass of(Role role, Mix mix) {
    return switch (role) {
      case WALL -> new ElementClass("IfcWall", mix.schema().isOld() ? "" : "SOLIDWALL");
      case SLAB -> new ElementClass("IfcSlab", "BASESLAB");
      case FOOTING -> new ElementClass("IfcFooting", "PAD_FOOTING");
      case PIPE -> pipe(mix);
      default -> carpentry(role, mix.classing());
    };
  }

  private static ElementClass pipe(Mix mix) {
    if (mix.classing() == Mix.Classing.PROXY) {
      return PROXY;
    }
    String name = mix.schema().isOld() ? "IfcFlowSegment" : "IfcPipeSegment";
    return new ElementClass(name, "RIGIDSEGMENT");
  }

  private static ElementClass carpentry(Role role, Mix.Classing classing) {
    return switch (classing) {
      case PROXY -> PROXY;
      case MEMBER -> new ElementClass("IfcMember", upright(role) ? "POST" : "MEMBER");
      case BEAM, ASSEMBLY -> byPurpose(role);
    };
  }

  private static boolean upright(Role role) {
    return role == Role.POST || role == Role.GUARD;
  }

  private static ElementClass byPurpose(Role role) {
    return switch (role) {
      case JOIST -> new ElementClass("IfcBeam", "JOIST");
      case LEDGER, RIM, BEAM -> new ElementClass("IfcBeam", "BEAM");
      case POST -> new ElementClass("IfcColumn", "COLUMN");
      case BLOCKING -> new ElementClass("IfcMember", "MEMBER");
      case GUARD -> new ElementClass("IfcRailing", "GUARDRAIL");
      case DECK_BOARD -> new ElementClass("IfcCovering", "FLOORING");
      default -> new ElementClass("IfcPlate", "SHEET");
    };
  }

  String entity() {
    return name.toUpperCase(Locale.ROOT);
  }

  /** Its type's entity; a flow segment of IFC2X3 says what it is only there. */
  String typeEntity() {
    return "IfcFlowSegment".equals(name) ? "IFCPIPESEGMENTTYPE" : entity() + "TYPE";
  }

  /** Whether every schema has a type for it that the writer uses. */
  boolean isRepeated() {
    return switch (name) {
      case "IfcWall", "IfcSlab", "IfcFooting" -> false;
      default -> true;
    };
  }
}
