package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.underlee.layout.FieldLayout;
import org.underlee.run.Arrangement;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;

/**
 * Arrangements in words, the best first.
 *
 * @param shown what is laid out now, one of them perhaps
 */
record ArrangementRows(List<Arrangement> all, Optional<Result> shown, UnitSystem units) {
  private static final List<String> HEAD =
      List.of(
          "Row",
          "Standing",
          "Kit",
          "Low end",
          "Fall",
          "Dry",
          "Head-\nroom",
          "Parts\nto cut",
          "Pieces\nto buy");
  private static final List<Integer> NUMBERS = List.of(0, 5, 6, 7, 8);

  /** One in a row; what is not in it is in {@link #besides}. */
  Table table() {
    return new Table(
        "Arrangements",
        HEAD,
        NUMBERS,
        IntStream.range(0, all.size())
            .mapToObj(i -> new Table.Line(cells(i + 1, all.get(i)), Optional.empty()))
            .toList());
  }

  private List<String> cells(int row, Arrangement a) {
    return List.of(
        Integer.toString(row),
        standing(a),
        a.kit().name() + (a.boardsOff() ? ", boards off" : ""),
        Names.lowEnd(a.lowEnd()) + (a.bothWays().isEmpty() ? "" : ", both ways"),
        "1:" + Math.round(1 / a.fall()),
        new Quantity(a.dryFraction(), Quantity.Kind.SHARE).in(units),
        a.headroom().isPresent() ? Lengths.format(a.headroom().getAsDouble(), units) : "–",
        Integer.toString(a.partsCut()),
        Integer.toString(a.bought()));
  }

  private String standing(Arrangement a) {
    String better = a.dominatedBy().map(n -> n + " is better").orElse("");
    return isInUse(a) ? (better.isEmpty() ? "● in use" : "● in use; " + better) : better;
  }

  /** Whether the parts that are shown are those of an arrangement. */
  private boolean isInUse(Arrangement a) {
    return shown
        .filter(Result::isLaidOut)
        .map(Result::layout)
        .filter(l -> l.kit().id().equals(a.kit().id()) && l.kit().fall() == a.fall())
        .filter(l -> places(l.fields()).equals(places(a.fields())))
        .isPresent();
  }

  /** What tells one layout of a deck from another, without each of its thousands of parts. */
  private static List<List<Object>> places(List<FieldLayout> fields) {
    return fields.stream()
        .map(f -> List.<Object>of(f.field(), f.lowEnd(), f.run(), f.seatHigh(), f.parts().size()))
        .toList();
  }

  /** What there is to say of a row besides what is in the table. */
  String besides(int row) {
    List<FieldLayout> fields = all.get(row).fields();
    String outlets = all.get(row).drains().map(d -> "; outlets: " + d.own().outlets()).orElse("");
    return "Row "
        + (row + 1)
        + ": seat above the joist bottom "
        + fields.stream()
            .map(f -> Lengths.format(f.seatHigh(), units))
            .distinct()
            .collect(Collectors.joining(" / "))
        + "; low end at "
        + fields.stream().map(FieldLayout::lowEnd).distinct().collect(Collectors.joining(" / "))
        + outlets;
  }
}
