package org.underlee.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.underlee.drainage.DrainProof;
import org.underlee.framing.HighLine;
import org.underlee.kit.StockItem;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.run.Design;
import org.underlee.takeoff.Takeoff;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Shares;

/**
 * Writes a design for people: what was decided for each field, then what to buy and what to cut.
 */
public final class DesignText {
  private static final String CAUTIONS =
      """
      Before work starts: have the deck's structure, its ledger and its guards checked by someone
      licensed to do so; this program checks none of them. Nothing here cuts a joist, a beam or the
      ledger. Where the water may be led, what may be closed in below a deck, and wiring, gas and
      vents near it are matters of your local code. Mind sheet-metal edges, ladders and eyes.
      """;

  private DesignText() {}

  public static String write(Design design, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    out.append("Kit: ").append(design.layout().kit().name()).append('\n');
    Map<String, HighLine> lines = new TreeMap<>();
    design
        .survey()
        .framing()
        .fields()
        .forEach(f -> f.highLine().ifPresent(h -> lines.put(f.id(), h)));
    design
        .layout()
        .fields()
        .forEach(f -> field(out, f, Optional.ofNullable(lines.get(f.field())), units));
    if (!design.layout().fields().isEmpty()) {
      out.append('\n').append(dry(design.proof(), units));
      out.append(takeoff(design, units));
      out.append('\n').append(CAUTIONS);
    }
    return out.toString();
  }

  /** How much of the deck is dry below. */
  static String dry(DrainProof proof, UnitSystem units) {
    return String.format(
            Locale.ROOT,
            "Rain that reaches an outlet: %.1f %% of %s of deck between the outer joists%n",
            Shares.percent(proof.dryFraction(), 1),
            Quantity.area(proof.area()).in(units))
        .replace("\r\n", "\n");
  }

  private static void field(
      StringBuilder out, FieldLayout f, Optional<HighLine> line, UnitSystem units) {
    Map<PartKind, Long> kinds =
        f.parts().stream()
            .filter(p -> !p.bodies().isEmpty())
            .collect(Collectors.groupingBy(Part::kind, TreeMap::new, Collectors.counting()));
    out.append('\n').append(f.field()).append('\n');
    out.append("  falls ").append(Lengths.fall(f.fall())).append(" to ").append(f.lowEnd());
    out.append("; longest run ").append(Lengths.format(f.run(), units)).append('\n');
    line.ifPresent(h -> out.append("  ").append(h.words().in(units)).append('\n'));
    out.append("  seat at the high end ").append(seat(f.seatHigh(), units));
    out.append(", set by ").append(f.binding().in(units)).append('\n');
    out.append("  ")
        .append(
            kinds.entrySet().stream()
                .map(e -> e.getValue() + " " + e.getKey().spoken() + (e.getValue() == 1 ? "" : "s"))
                .collect(Collectors.joining(", ")))
        .append('\n');
  }

  private static String seat(double height, UnitSystem units) {
    String size = Lengths.format(Math.abs(height), units);
    return size + (height < 0 ? " below" : " above") + " the joist bottom";
  }

  /** What to buy, then what to cut: also for the takeoff on its own. */
  public static String takeoff(Design design, UnitSystem units) {
    StringBuilder out = new StringBuilder("\nTo buy\n");
    Takeoff takeoff = design.takeoff();
    for (Takeoff.Line line : takeoff.lines()) {
      StockItem item = design.layout().kit().item(line.item());
      String name = item.description(units);
      onHand(out, takeoff, item, units);
      if (item.isSoldByLength()) {
        List<String> rows = bought(takeoff, line.item(), units);
        for (String amount : rows) {
          boolean last = amount.equals(rows.get(rows.size() - 1));
          out.append(row(amount, name, last ? used(takeoff, line, units) : ""));
        }
      } else {
        out.append(row(String.format(Locale.ROOT, "%.0f", line.quantity()), name, ""));
      }
    }
    out.append(OrderText.write(takeoff.order(), design.layout().kit(), units));
    out.append("\nTo cut\n");
    takeoff.cuts().forEach(c -> out.append(cut(c, units)));
    out.append(NotchText.write(design.layout().parts(), units));
    return out.toString();
  }

  private static void onHand(StringBuilder out, Takeoff takeoff, StockItem item, UnitSystem units) {
    for (Takeoff.Stock own : takeoff.stock()) {
      if (own.item().equals(item.id()) && own.onHand()) {
        String amount = own.pieces() + " x " + Lengths.format(own.stockLength(), units);
        out.append(row(amount, item.description(units), "on hand, not to be bought"));
      }
    }
  }

  private static List<String> bought(Takeoff takeoff, String item, UnitSystem units) {
    Map<Double, Integer> lengths = new TreeMap<>();
    takeoff.stock().stream()
        .filter(s -> s.item().equals(item) && !s.onHand())
        .forEach(s -> lengths.merge(s.stockLength(), s.pieces(), Integer::sum));
    List<String> rows = new ArrayList<>();
    lengths.forEach((length, n) -> rows.add(n + " x " + Lengths.format(length, units)));
    return rows;
  }

  private static String used(Takeoff takeoff, Takeoff.Line line, UnitSystem units) {
    return Lengths.format(line.quantity(), units)
        + String.format(
            Locale.ROOT, " used, %.0f %% left over", 100 * takeoff.leftOver(line.item()));
  }

  private static String row(String amount, String what, String note) {
    return String.format(Locale.ROOT, "  %-16s %-62s %s", amount, what, note).stripTrailing()
        + "\n";
  }

  private static String cut(Takeoff.Cut cut, UnitSystem units) {
    String flat =
        cut.sheetWidth().isPresent()
            ? " x " + Lengths.cut(cut.sheetWidth().getAsDouble(), units) + " flat"
            : "";
    return String.format(
            Locale.ROOT,
            "  %3d x %-32s %-13s %s",
            cut.count(),
            Lengths.cut(cut.length(), units) + flat,
            cut.kind().spoken(),
            places(cut.bays()))
        + "\n";
  }

  /** Bays by field: {@code deck-1/field-1: B1 B2}. */
  private static String places(List<String> bays) {
    Map<String, List<String>> fields = new TreeMap<>();
    for (String bay : bays) {
      boolean whole = bay.chars().filter(c -> c == '/').count() < 2;
      String field = whole ? bay : bay.substring(0, bay.lastIndexOf('/'));
      List<String> own = fields.computeIfAbsent(field, f -> new ArrayList<>());
      if (!whole) {
        own.add(bay.substring(bay.lastIndexOf('/') + 1));
      }
    }
    return fields.entrySet().stream()
        .map(
            e -> e.getKey() + (e.getValue().isEmpty() ? "" : ": " + String.join(" ", e.getValue())))
        .collect(Collectors.joining("; "));
  }
}
