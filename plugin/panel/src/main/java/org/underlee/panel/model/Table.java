package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.Leak;
import org.underlee.drainage.OutletShare;
import org.underlee.drainage.flow.Storm;
import org.underlee.run.Design;
import org.underlee.takeoff.Takeoff;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;

/**
 * Rows of text under a head, some of which lead to what they are about.
 *
 * @param numbers which columns are numbers, set to the right
 */
public record Table(String name, List<String> head, List<Integer> numbers, List<Line> lines) {
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
  public static List<Table> takeoff(Design design, UnitSystem units) {
    return List.of(
        count(design, units), cuts(design.takeoff(), units), stock(design.takeoff(), units));
  }

  private static Table count(Design design, UnitSystem units) {
    return new Table(
        "Quantities",
        List.of("Item", "Description", "Net quantity", "Pieces"),
        List.of(2, 3),
        design.takeoff().lines().stream()
            .map(
                l ->
                    new Line(
                        List.of(
                            l.item(),
                            design.layout().kit().item(l.item()).description(units),
                            l.unit().equals("m")
                                ? metres(l.quantity(), units)
                                : Long.toString(Math.round(l.quantity())),
                            Integer.toString(l.parts().size())),
                        l.parts().stream().findFirst().map(Item.OfPart::new)))
            .toList());
  }

  private static Table cuts(Takeoff takeoff, UnitSystem units) {
    return new Table(
        "Cut list",
        List.of("Piece", "Cut from", "Length", "Sheet width", "Count", "Where"),
        List.of(2, 3, 4),
        takeoff.cuts().stream()
            .map(
                c ->
                    new Line(
                        List.of(
                            c.kind().spoken(),
                            c.item(),
                            Lengths.cut(c.length(), units),
                            c.sheetWidth().isPresent()
                                ? Lengths.cut(c.sheetWidth().getAsDouble(), units)
                                : "",
                            Integer.toString(c.count()),
                            String.join(" ", c.bays())),
                        Optional.empty()))
            .toList());
  }

  private static Table stock(Takeoff takeoff, UnitSystem units) {
    return new Table(
        "To buy",
        List.of("Item", "Stock length", "Sticks", "Cut each into", "Offcut"),
        List.of(1, 2, 4),
        takeoff.stock().stream()
            .map(
                s ->
                    new Line(
                        List.of(
                            s.item(),
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

  /**
   * Where the water of each outlet comes from, what leaks, and what happens when one is blocked.
   */
  public static List<Table> water(Design design, Storm storm, UnitSystem units) {
    DrainProof proof = design.proof();
    return List.of(outlets(proof, storm, units), leaks(proof, storm, units), blocked(proof, units));
  }

  private static Table outlets(DrainProof proof, Storm storm, UnitSystem units) {
    List<Line> lines = new ArrayList<>();
    for (OutletShare share : proof.outlets()) {
      lines.add(
          new Line(
              List.of(
                  share.outlet(),
                  Quantity.area(share.area()).in(units),
                  Quantity.of(Quantity.Kind.FLOW, storm.flow(share.area())).in(units),
                  String.join(
                      " ", share.bays().keySet().stream().sorted(Table::byNumber).toList())),
              Optional.of(new Item.OfPart(share.outlet()))));
    }
    return new Table(
        "Outlets", List.of("Outlet", "Deck area", "Flow", "Bays"), List.of(1, 2), lines);
  }

  /** {@code B2} before {@code B10}. */
  private static int byNumber(String a, String b) {
    return a.length() == b.length() ? a.compareTo(b) : Integer.compare(a.length(), b.length());
  }

  private static Table leaks(DrainProof proof, Storm storm, UnitSystem units) {
    List<Line> lines = new ArrayList<>();
    for (Leak leak : proof.leaks()) {
      lines.add(
          new Line(
              List.of(
                  leak.field() + " " + leak.bay(),
                  leak.cause().why(),
                  Quantity.area(leak.area()).in(units),
                  Quantity.of(Quantity.Kind.DRIP, storm.flow(leak.area())).in(units),
                  leak.cause().fix()),
              Optional.of(new Item.OfBay(leak.field(), leak.bay()))));
    }
    return new Table(
        "Not drained",
        List.of("Where", "Why", "Deck area", "In this rain", "What to do"),
        List.of(2, 3),
        lines);
  }

  private static Table blocked(DrainProof proof, UnitSystem units) {
    return new Table(
        "If an outlet is blocked",
        List.of("Blocked outlet", "Water stands in", "Deepest", "Weight", "Then runs to"),
        List.of(2, 3),
        proof.blocked().stream()
            .map(
                b ->
                    new Line(
                        List.of(
                            b.blocked().orElse(""),
                            b.part(),
                            Lengths.format(b.depth(), units),
                            new Quantity(b.mass(), Quantity.Kind.MASS).in(units),
                            b.spillsTo()),
                        Optional.of(new Item.OfPart(b.part()))))
            .toList());
  }
}
