package org.underlee.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.run.Design;
import org.underlee.takeoff.Order;
import org.underlee.takeoff.Share;
import org.underlee.takeoff.Stick;
import org.underlee.takeoff.Takeoff;

/**
 * Writes a takeoff as one CSV table (RFC 4180, CR LF, UTF-8): rows of what is in the assembly
 * ({@code count}), of pieces to cut ({@code cut}), of how lengths are cut ({@code buy}, or {@code
 * on-hand} where they are there already), of what to ask a shop for ({@code order}) and, for a
 * design, of what is in each bay, field, deck and storey ({@code bay} …).
 */
public final class TakeoffCsv {
  private static final int QUANTITY_DECIMALS = 4;

  private static final List<String> HEAD =
      List.of(
          "row",
          "item",
          "description",
          "quantity",
          "unit",
          "length_mm",
          "sheet_width_mm",
          "pattern_mm",
          "offcut_mm",
          "where",
          "needed",
          "spare",
          "pack",
          "price",
          "cost",
          "currency",
          "global_ids");

  private TakeoffCsv() {}

  /** The table without places. */
  public static String write(Takeoff takeoff) {
    return table(rows(takeoff, Map.of()));
  }

  /** The table with what is in each place, and the GlobalIds of what is counted. */
  public static String write(Design design) {
    Map<String, String> globalIds = design.globalIds();
    return table(
        Stream.concat(
            rows(design.takeoff(), globalIds),
            Share.of(design.layout()).stream().map(s -> share(s, globalIds))));
  }

  private static String table(Stream<List<String>> rows) {
    return Stream.concat(Stream.of(HEAD), rows)
        .map(r -> r.stream().map(Csv::cell).collect(Collectors.joining(",")))
        .collect(Collectors.joining("\r\n", "", "\r\n"));
  }

  private static Stream<List<String>> rows(Takeoff takeoff, Map<String, String> globalIds) {
    Order order = takeoff.order();
    return Stream.of(
            takeoff.lines().stream().map(l -> line(l, globalIds)),
            takeoff.cuts().stream().map(TakeoffCsv::cut),
            takeoff.stock().stream().map(TakeoffCsv::stock),
            order.rows().stream().map(r -> order(r, order.currency().orElse(""))))
        .flatMap(s -> s);
  }

  /** A row that goes no further than some column: the rest is empty. */
  private static List<String> row(String... cells) {
    List<String> row = new ArrayList<>(List.of(cells));
    while (row.size() < HEAD.size()) {
      row.add("");
    }
    return row;
  }

  private static List<String> withIds(
      List<String> row, List<String> parts, Map<String, String> globalIds) {
    row.set(HEAD.size() - 1, ids(parts, globalIds));
    return row;
  }

  static String ids(List<String> parts, Map<String, String> globalIds) {
    return parts.stream()
        .map(globalIds::get)
        .filter(Objects::nonNull)
        .collect(Collectors.joining(" "));
  }

  private static List<String> line(Takeoff.Line l, Map<String, String> globalIds) {
    return withIds(
        row("count", l.item(), l.description(), quantity(l.quantity()), l.unit()),
        l.parts(),
        globalIds);
  }

  private static List<String> share(Share s, Map<String, String> globalIds) {
    List<String> row = row(s.level().word(), s.item(), "", quantity(s.quantity()), s.unit());
    row.set(HEAD.indexOf("where"), s.place());
    return withIds(row, s.parts(), globalIds);
  }

  private static String quantity(double quantity) {
    return Json.rounded(quantity, QUANTITY_DECIMALS).toPlainString();
  }

  private static List<String> cut(Takeoff.Cut c) {
    String count = Integer.toString(c.count());
    String where = String.join(" ", c.bays());
    String width = c.sheetWidth().isPresent() ? mm(c.sheetWidth().getAsDouble()) : "";
    return row(
        "cut", c.item(), c.kind().word(), count, "piece", mm(c.length()), width, "", "", where);
  }

  private static List<String> stock(Takeoff.Stock s) {
    return row(
        s.onHand() ? "on-hand" : "buy",
        s.item(),
        "",
        Integer.toString(s.pieces()),
        "stock length",
        mm(s.stockLength()),
        "",
        pattern(s),
        mm(s.offcut()));
  }

  /** {@code 1200 + 900 (300 | 250)}: a cross-cut that is ripped has its widths in brackets. */
  static String pattern(Takeoff.Stock stock) {
    return stock.blocks().stream().map(TakeoffCsv::block).collect(Collectors.joining(" + "));
  }

  private static String block(Stick.Block block) {
    return block.pieces().size() == 1
        ? mm(block.length())
        : mm(block.length())
            + block.pieces().stream()
                .map(
                    p ->
                        (p.length() < block.length() ? mm(p.length()) + " x " : "") + mm(p.width()))
                .collect(Collectors.joining(" | ", " (", ")"));
  }

  private static List<String> order(Order.Row r, String currency) {
    return row(
        "order",
        r.item(),
        r.description(),
        Integer.toString(r.units()),
        r.unit(),
        r.stockLength().isPresent() ? mm(r.stockLength().getAsDouble()) : "",
        "",
        "",
        "",
        "",
        Integer.toString(r.needed()),
        Integer.toString(r.spare()),
        Integer.toString(r.perUnit()),
        r.price().map(p -> p.toPlainString()).orElse(""),
        r.cost().map(c -> c.toPlainString()).orElse(""),
        r.price().isPresent() ? currency : "");
  }

  private static String mm(double metres) {
    return Json.mm(metres).toPlainString();
  }
}
