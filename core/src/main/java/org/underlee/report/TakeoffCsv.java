package org.underlee.report;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.takeoff.Takeoff;

/**
 * Writes a takeoff as one CSV table (RFC 4180, CR LF, UTF-8): rows of what is in the assembly
 * ({@code count}), of pieces to cut ({@code cut}) and of what to buy ({@code buy}).
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
          "where");

  private TakeoffCsv() {}

  public static String write(Takeoff takeoff) {
    Stream<List<String>> rows =
        Stream.of(
                Stream.of(HEAD),
                takeoff.lines().stream().map(TakeoffCsv::line),
                takeoff.cuts().stream().map(TakeoffCsv::cut),
                takeoff.stock().stream().map(TakeoffCsv::stock))
            .flatMap(s -> s);
    return rows.map(r -> r.stream().map(Csv::cell).collect(Collectors.joining(",")))
        .collect(Collectors.joining("\r\n", "", "\r\n"));
  }

  private static List<String> line(Takeoff.Line l) {
    String quantity = Json.rounded(l.quantity(), QUANTITY_DECIMALS).toPlainString();
    return List.of("count", l.item(), l.description(), quantity, l.unit(), "", "", "", "", "");
  }

  private static List<String> cut(Takeoff.Cut c) {
    String count = Integer.toString(c.count());
    String where = String.join(" ", c.bays());
    String width = c.sheetWidth().isPresent() ? mm(c.sheetWidth().getAsDouble()) : "";
    return List.of(
        "cut", c.item(), c.kind().word(), count, "piece", mm(c.length()), width, "", "", where);
  }

  private static List<String> stock(Takeoff.Stock s) {
    String pattern = s.pattern().stream().map(TakeoffCsv::mm).collect(Collectors.joining(" + "));
    String pieces = Integer.toString(s.pieces());
    return List.of(
        "buy",
        s.item(),
        "",
        pieces,
        "stock length",
        mm(s.stockLength()),
        "",
        pattern,
        mm(s.offcut()),
        "");
  }

  private static String mm(double metres) {
    return Json.mm(metres).toPlainString();
  }
}
