package org.underlee.panel.model;

/** A thing that can be selected: one selection, whatever shows it. */
public sealed interface Item {
  /** {@code deck-1}. */
  record OfDeck(String id) implements Item {}

  /** {@code deck-1/field-1}. */
  record OfField(String id) implements Item {}

  /** {@code deck-1/field-1} and {@code B3}. */
  record OfBay(String field, String bay) implements Item {}

  record OfPart(String id) implements Item {}

  /** An element of the designer's model. */
  record OfElement(String globalId) implements Item {}
}
