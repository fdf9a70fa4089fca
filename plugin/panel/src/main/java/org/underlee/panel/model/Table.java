package org.underlee.panel.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.underlee.run.Design;
import org.underlee.takeoff.Takeoff;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Rows of text under a head, some of which lead to what they are about.
 *
 * @param numbers which columns are numbers, set to the right
 */
public record Table(String name, List<String> head, List<Integer> numbers, List<Line> lines) {
  static final String QUANTITIES = "Quantities";
  static final String CUT_LIST = "Cut list";
  static final String TO_BUY = "To buy";

  /** Tables of the takeoff by name, and of the water. */
  public static final List<String> TAKEOFF = List.of(QUANTITIES, CUT_LIST, TO_BUY);

  public static final List<String> WATER =
      List.of(WaterTables.RATED, WaterTables.OUTLETS, WaterTables.NOT_DRAINED, WaterTables.BLOCKED);

  public Table {
    head = List.copyOf(head);
    numbers = List.copyOf(numbers);
    lines = List.copyOf(lines);
  }

  /** One row. */
  public record Line(List<String> cells, Optional<Item> item) {
    public Line {
      cells = List.copyOf(cells);
    }
  }

  /** What is in the assembly, what to cut and what to buy. */
  static List<Table> takeoff(Result result, Design design, UnitSystem units) {
    return List.of(
        count(design, units),
        cuts(design.takeoff(), Names.of(result, design.layout()), units),
        stock(design.takeoff(), units));
  }

  private static Table count(Design design, UnitSystem units) {
    return new Table(
        QUANTITIES,
        List.of("Item", "Description", "Net quantity", "Pieces"),
        List.of(2, 3),
        design.takeoff().lines().stream()
            .map(
                l ->
                    new Line(
                        List.of(
                            Names.item(l.item()),
                            design.layout().kit().item(l.item()).description(units),
                            l.unit().equals("m")
                                ? metres(l.quantity(), units)
                                : Long.toString(Math.round(l.quantity())),
                            Integer.toString(l.parts().size())),
                        l.parts().stream().findFirst().map(Item.OfPart::new)))
            .toList());
  }

  private static Table cuts(Takeoff takeoff, Names names, UnitSystem units) {
    return new Table(
        CUT_LIST,
        List.of("Piece", "Cut from", "Length", "Sheet width", "Count", "Where"),
        List.of(2, 3, 4),
        takeoff.cuts().stream()
            .map(
                c ->
                    new Line(
                        List.of(
                            c.kind().spoken(),
                            Names.item(c.item()),
                            Lengths.cut(c.length(), units),
                            c.sheetWidth().isPresent()
                                ? Lengths.cut(c.sheetWidth().getAsDouble(), units)
                                : "",
                            Integer.toString(c.count()),
                            names.inText(String.join(" ", c.bays()))),
                        Optional.empty()))
            .toList());
  }

  private static Table stock(Takeoff takeoff, UnitSystem units) {
    return new Table(
        TO_BUY,
        List.of("Item", "Stock length", "Sticks", "Cut each into", "Offcut"),
        List.of(1, 2, 4),
        takeoff.stock().stream()
            .map(
                s ->
                    new Line(
                        List.of(
                            Names.item(s.item()),
                            Lengths.format(s.stockLength(), units),
                            Integer.toString(s.pieces()),
                            pattern(s.pattern(), units),
                            Lengths.format(s.offcut(), units)),
                        Optional.empty()))
            .toList());
  }

  /** {@code 3 × 1000 mm + 1 × 500 mm}. */
  private static String pattern(List<Double> pattern, UnitSystem units) {
    Map<Double, Long> counts =
        pattern.stream()
            .collect(
                Collectors.groupingBy(l -> l, java.util.LinkedHashMap::new, Collectors.counting()));
    return counts.entrySet().stream()
        .map(e -> e.getValue() + " × " + Lengths.cut(e.getKey(), units))
        .collect(Collectors.joining(" + "));
  }

  private static String metres(double metres, UnitSystem units) {
    return units == UnitSystem.METRIC
        ? String.format(java.util.Locale.ROOT, "%.2f m", metres)
        : String.format(java.util.Locale.ROOT, "%.1f ft", metres / Lengths.FOOT);
  }
}
