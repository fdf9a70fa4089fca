package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import org.underlee.framing.Storey;
import org.underlee.units.Words;

/**
 * The assembly laid out for one joist field.
 *
 * @param deck {@code deck-1}
 * @param field {@code deck-1/field-1}
 * @param storey where the framing is, in the model's spatial tree
 * @param seatHigh seat height at the high end, metres above the joist bottom there
 * @param fall drop over run of pans, rails and strips
 * @param run from the high end to the low-end line, metres
 * @param lowEnd what the low-end line follows, in words: {@code the house side of beam …}
 * @param binding the limit that fixed the seat height, in words
 * @param bays ids of the bays whose water is caught
 * @param parts in building order
 * @param links of the drain run, upstream first
 * @param gutter where its outlets are and may be; empty where that is not known
 */
public record FieldLayout(
    String deck,
    String field,
    Optional<Storey> storey,
    double seatHigh,
    double fall,
    double run,
    String lowEnd,
    Words binding,
    List<String> bays,
    List<Part> parts,
    List<Link> links,
    Optional<GutterPlaces> gutter) {
  public FieldLayout {
    bays = List.copyOf(bays);
    parts = List.copyOf(parts);
    links = List.copyOf(links);
  }

  /** One whose bays are those that its parts name, its gutter not known. */
  public FieldLayout(
      String deck,
      String field,
      Optional<Storey> storey,
      double seatHigh,
      double fall,
      double run,
      String lowEnd,
      Words binding,
      List<Part> parts,
      List<Link> links) {
    this(
        deck,
        field,
        storey,
        seatHigh,
        fall,
        run,
        lowEnd,
        binding,
        parts.stream().flatMap(p -> p.bay().stream()).distinct().toList(),
        parts,
        links,
        Optional.empty());
  }

  /** As at the head of every label in the field, {@code F1}; its id where nothing hangs in it. */
  public String mark() {
    return parts.stream()
        .map(Part::label)
        .map(label -> label.substring(0, label.indexOf('-')))
        .findFirst()
        .orElse(field);
  }
}
