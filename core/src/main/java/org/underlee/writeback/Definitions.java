package org.underlee.writeback;

import java.util.List;

/** Attaches property sets and quantities to an object. Each object has its own: none is shared. */
final class Definitions {
  /** What the standard's quantity sets say of how they are measured. */
  private static final Value METHOD = Value.label("BaseQuantities");

  private final Draft draft;

  Definitions(Draft draft) {
    this.draft = draft;
  }

  void attach(Value object, String field, String owner, PropertySet set) {
    if (!set.properties().isEmpty()) {
      Value properties = Value.list(set.properties());
      String key = owner + "/" + set.name();
      Value written =
          draft.root(
              "IfcPropertySet",
              draft.ids().of(field, "property-set", key),
              Value.label(set.name()),
              Value.UNSET,
              properties);
      define(object, field, key, written);
    }
  }

  void attachQuantities(
      Value object, String field, String owner, String name, List<Value> quantities) {
    if (!quantities.isEmpty()) {
      String key = owner + "/" + name;
      Value written =
          draft.root(
              "IfcElementQuantity",
              draft.ids().of(field, "quantities", key),
              Value.label(name),
              Value.UNSET,
              name.startsWith("Qto_") ? METHOD : Value.UNSET,
              Value.list(quantities));
      define(object, field, key, written);
    }
  }

  private void define(Value object, String field, String key, Value definition) {
    draft.relate(
        "IfcRelDefinesByProperties",
        draft.ids().of(field, "defines-by-properties", key),
        Value.list(object),
        definition);
  }
}
