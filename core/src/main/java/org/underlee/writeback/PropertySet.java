package org.underlee.writeback;

import java.util.ArrayList;
import java.util.List;

/** Properties under one name, collected until they are attached to an object. */
final class PropertySet {
  private final InstanceWriter out;
  private final String name;
  private final List<Value> properties = new ArrayList<>();

  PropertySet(InstanceWriter out, String name) {
    this.out = out;
    this.name = name;
  }

  String name() {
    return name;
  }

  List<Value> properties() {
    return properties;
  }

  /**
   * @param type of its value: {@code IfcLabel}
   */
  PropertySet with(String property, String type, Value value) {
    return add("IfcPropertySingleValue", property, Value.typed(type, value), Value.UNSET);
  }

  /**
   * @param enumeration the values to choose from, as the standard lists them
   */
  PropertySet withChoice(String property, String word, Value enumeration) {
    Value chosen = Value.list(Value.typed("IfcLabel", Value.label(word)));
    return add("IfcPropertyEnumeratedValue", property, chosen, enumeration);
  }

  private PropertySet add(String entity, String property, Value value, Value last) {
    properties.add(out.add(entity, Value.label(property), Value.UNSET, value, last));
    return this;
  }
}
