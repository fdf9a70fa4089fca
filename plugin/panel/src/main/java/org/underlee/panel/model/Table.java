package org.underlee.panel.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.underlee.layout.Part;
import org.underlee.run.Design;
import org.underlee.takeoff.Stick;
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

  /**
   * One row.
   *
   * @param items what it is about, in their order
   */
  public record Line(List<String> cells, List<Item> items) {
    public Line {
      cells = List.copyOf(cells);
      items = List.copyOf(items);
    }

    Line(List<String> cells, Optional<? extends Item> item) {
      this(cells, item.<Item>map(i -> i).stream().toList());
    }
  }

  /** What is in the assembly, what to cut and what to buy. */
  static List<Table> takeoff(Result result, Design design, UnitSystem units) {
    Names names = Names.of(result, design.layout());
    return List.of(count(design, units), cuts(design, names, units), stock(design, units));
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
                        l.parts().stream().<Item>map(Item.OfPart::new).toList()))
            .toList());
  }

  private static Table cuts(Design design, Names names, UnitSystem units) {
    Map<String, List<Part>> parts = byItem(design);
    return new Table(
        CUT_LIST,
        List.of("Piece", "Cut from", "Length", "Sheet width", "Count", "Where"),
        List.of(2, 3, 4),
        design.takeoff().cuts().stream()
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
                        items(parts, c.item(), p -> isCut(p, c))))
            .toList());
  }

  private static Map<String, List<Part>> byItem(Design design) {
    return design.layout().parts().stream().collect(Collectors.groupingBy(Part::item));
  }

  private static List<Item> items(
      Map<String, List<Part>> parts, String item, Predicate<Part> which) {
    return parts.getOrDefault(item, List.of()).stream()
        .filter(which)
        .<Item>map(p -> new Item.OfPart(p.id()))
        .toList();
  }

  private static boolean isCut(Part part, Takeoff.Cut cut) {
    return part.kind() == cut.kind()
        && Lengths.toCut(part.cutLength()) == cut.length()
        && part.sheetWidth().stream().map(Lengths::toCut).sum() == cut.sheetWidth().orElse(0);
  }

  /** Pieces of one size are as good as each other: all of them may come from such a stick. */
  private static boolean isCut(Part part, Takeoff.Stock stock) {
    Stick.Piece own =
        new Stick.Piece(
            Lengths.toCut(part.cutLength()), part.sheetWidth().stream().map(Lengths::toCut).sum());
    return stock.blocks().stream().anyMatch(b -> b.pieces().contains(own));
  }

  private static Table stock(Design design, UnitSystem units) {
    Map<String, List<Part>> parts = byItem(design);
    return new Table(
        TO_BUY,
        List.of("Item", "Stock length", "Sticks", "Cut each into", "Offcut"),
        List.of(1, 2, 4),
        design.takeoff().stock().stream()
            .map(
                s ->
                    new Line(
                        List.of(
                            Names.item(s.item()),
                            Lengths.format(s.stockLength(), units),
                            Integer.toString(s.pieces()),
                            pattern(s.pattern(), units),
                            Lengths.format(s.offcut(), units)),
                        items(parts, s.item(), p -> isCut(p, s))))
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
