package org.underlee.panel.model;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Everything of a result that is shown as a tree or a table, made beside the screen's thread.
 *
 * @param of the result that it was made of
 * @param decks the outline, one tree for each deck
 * @param above which item each item of the outline is inside
 */
public record Lists(
    Optional<Result> of,
    List<Outline> decks,
    Map<Item, Item> above,
    List<Table> takeoff,
    List<Table> water,
    List<Finding> findings) {
  static final Lists NONE =
      new Lists(Optional.empty(), List.of(), Map.of(), List.of(), List.of(), List.of());

  public Lists {
    decks = List.copyOf(decks);
    above = Map.copyOf(above);
    takeoff = List.copyOf(takeoff);
    water = List.copyOf(water);
    findings = List.copyOf(findings);
  }

  static Lists of(Result result, UnitSystem units) {
    List<Outline> decks = Outline.of(result, units);
    Map<Item, Item> above = new HashMap<>();
    decks.forEach(d -> place(d, above));
    return new Lists(
        Optional.of(result),
        decks,
        above,
        result.design().map(d -> Table.takeoff(result, d, units)).orElse(List.of()),
        result.design().map(d -> WaterTables.of(result, d, units)).orElse(List.of()),
        result.findings());
  }

  private static void place(Outline outline, Map<Item, Item> above) {
    for (Outline inner : outline.inside()) {
      above.put(inner.item(), outline.item());
      place(inner, above);
    }
  }

  /** Whether this was made of that very result: equal ones would take long to compare. */
  @SuppressWarnings("ReferenceEquality")
  public boolean isOf(Result result) {
    return of.filter(r -> r == result).isPresent();
  }
}
