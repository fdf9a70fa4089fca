package org.underlee.panel.model;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    List<Noticed> noticed) {
  static final Lists NONE =
      new Lists(Optional.empty(), List.of(), Map.of(), List.of(), List.of(), List.of());

  public Lists {
    decks = List.copyOf(decks);
    above = Map.copyOf(above);
    takeoff = List.copyOf(takeoff);
    water = List.copyOf(water);
    noticed = List.copyOf(noticed);
  }

  static Lists of(Result result, UnitSystem units) {
    List<Outline> plain = Outline.of(result, units);
    Map<Item, Item> above = new HashMap<>();
    plain.forEach(d -> place(d, above));
    List<Noticed> noticed = Noticed.all(result);
    Map<Item, FindingCount> counts =
        FindingCount.of(
            FindingList.rows(noticed, result.decisions(), units, Optional.of(result)), above);
    List<Outline> decks = plain.stream().map(d -> d.counted(counts)).toList();
    return new Lists(
        Optional.of(result),
        decks,
        above,
        result.design().map(d -> Table.takeoff(result, d, units)).orElse(List.of()),
        result.design().map(d -> WaterTables.of(result, d, units)).orElse(List.of()),
        noticed);
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
