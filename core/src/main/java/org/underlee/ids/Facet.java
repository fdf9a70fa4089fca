package org.underlee.ids;

import java.util.Optional;

/** One aspect of an element that a specification asks for (IDS 1.0). */
sealed interface Facet {
  record Entity(IdsValue name, Optional<IdsValue> predefinedType) implements Facet {}

  record Attribute(IdsValue name, Optional<IdsValue> value) implements Facet {}

  /**
   * A property or quantity.
   *
   * @param dataType of its value, in upper case
   */
  record Property(IdsValue set, IdsValue name, Optional<IdsValue> value, Optional<String> dataType)
      implements Facet {}

  record Classification(IdsValue system, Optional<IdsValue> value) implements Facet {}

  record Material(Optional<IdsValue> value) implements Facet {}

  /**
   * What an element is part of.
   *
   * @param relation one or two entities of relationships; any when empty
   */
  record PartOf(Entity whole, Optional<String> relation) implements Facet {}

  /** In words, for a message. */
  default String words() {
    if (this instanceof Entity e) {
      return e.name().words() + e.predefinedType().map(p -> " " + p.words()).orElse("");
    } else if (this instanceof Attribute a) {
      return "attribute " + a.name().words() + a.value().map(v -> " = " + v.words()).orElse("");
    } else if (this instanceof Property p) {
      return "property "
          + p.set().words()
          + "."
          + p.name().words()
          + p.value().map(v -> " = " + v.words()).orElse("");
    } else if (this instanceof Classification c) {
      return "classification "
          + c.system().words()
          + c.value().map(v -> " " + v.words()).orElse("");
    } else if (this instanceof Material m) {
      return "material" + m.value().map(v -> " " + v.words()).orElse("");
    }
    return "part of " + ((PartOf) this).whole().words();
  }
}
