package org.underlee.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.underlee.layout.Part;
import org.underlee.run.Design;
import org.underlee.takeoff.Order;
import org.underlee.takeoff.Share;
import org.underlee.takeoff.Takeoff;

/**
 * Writes a takeoff as a workbook: one sheet each for the bill, the order, the cuts, the cutting
 * plan, what is in each place, and the parts. Numbers are numbers, the header stays in view,
 * columns can be filtered, pages print in landscape. The same design gives the same bytes.
 */
public final class TakeoffXlsx {
  private static final double NARROW = 12;
  private static final double WIDE = 60;
  private static final int DECIMALS = 3;
  private static final List<String> WIDE_COLUMNS =
      List.of("description", "where", "why", "cut to mm", "cuts mm", "why so many spare");

  private TakeoffXlsx() {}

  public static byte[] write(Design design) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(bytes, "Underlee", null)) {
      Takeoff takeoff = design.takeoff();
      sheet(
          book,
          "Bill",
          List.of(
              "item",
              "description",
              "quantity",
              "unit",
              "net m",
              "folds m",
              "laps m",
              "bought m",
              "on hand m",
              "beside m",
              "kept m",
              "waste m",
              "GlobalIds"),
          takeoff.lines().stream().map(l -> line(l, design)));
      order(book, takeoff.order());
      sheet(
          book,
          "Cuts",
          List.of("kind", "item", "count", "length mm", "sheet width mm", "where"),
          takeoff.cuts().stream()
              .map(
                  c ->
                      List.of(
                          c.kind().word(),
                          c.item(),
                          c.count(),
                          Json.mm(c.length()),
                          c.sheetWidth().isPresent() ? Json.mm(c.sheetWidth().getAsDouble()) : "",
                          String.join(" ", c.bays()))));
      sheet(
          book,
          "Buy",
          List.of("item", "count", "stock length mm", "offcut mm", "cut to mm", "from"),
          takeoff.stock().stream()
              .map(
                  s ->
                      List.of(
                          s.item(),
                          s.pieces(),
                          Json.mm(s.stockLength()),
                          Json.mm(s.offcut()),
                          TakeoffCsv.pattern(s),
                          s.onHand() ? "on hand" : "shop")));
      sheet(
          book,
          "Places",
          List.of("level", "where", "item", "quantity", "unit", "GlobalIds"),
          Share.of(design.layout()).stream()
              .map(
                  s ->
                      List.of(
                          s.level().word(),
                          s.place(),
                          s.item(),
                          Json.rounded(s.quantity(), DECIMALS),
                          s.unit(),
                          TakeoffCsv.ids(s.parts(), design.globalIds()))));
      sheet(
          book,
          "Parts",
          List.of("label", "kind", "count", "length mm", "width mm", "where", "cuts mm", "why"),
          design.layout().parts().stream().map(TakeoffXlsx::part));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return SteadyZip.of(bytes.toByteArray());
  }

  private static List<Object> line(Takeoff.Line l, Design design) {
    List<Object> row =
        new ArrayList<>(
            List.of(l.item(), l.description(), Json.rounded(l.quantity(), DECIMALS), l.unit()));
    Optional<Takeoff.Lengths> lengths =
        Optional.ofNullable(design.takeoff().lengths().get(l.item()));
    Stream.<ToDoubleFunction<Takeoff.Lengths>>of(
            Takeoff.Lengths::net,
            Takeoff.Lengths::folds,
            Takeoff.Lengths::laps,
            Takeoff.Lengths::bought,
            Takeoff.Lengths::onHand,
            Takeoff.Lengths::beside,
            Takeoff.Lengths::kept,
            Takeoff.Lengths::waste)
        .map(
            of ->
                lengths
                    .<Object>map(own -> Json.rounded(of.applyAsDouble(own), DECIMALS))
                    .orElse(""))
        .forEach(row::add);
    row.add(TakeoffCsv.ids(l.parts(), design.globalIds()));
    return row;
  }

  /** In shop units; costs stand only beside what has a price. */
  private static void order(Workbook book, Order order) {
    String currency = order.currency().map(c -> " " + c).orElse("");
    List<List<?>> rows = new ArrayList<>();
    order.rows().forEach(r -> rows.add(order(r)));
    order
        .cost()
        .ifPresent(
            c ->
                rows.add(
                    List.of(
                        "sum",
                        c.unpriced() == 0
                            ? "all that is ordered"
                            : "without " + c.unpriced() + " articles that have no price",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        c.amount(),
                        "")));
    sheet(
        book,
        "Order",
        List.of(
            "item",
            "description",
            "order",
            "unit",
            "pieces in unit",
            "length mm",
            "needed",
            "spare",
            "price" + currency,
            "cost" + currency,
            "why so many spare"),
        rows.stream());
  }

  private static List<Object> order(Order.Row r) {
    return List.of(
        r.item(),
        r.description(),
        r.units(),
        r.unit(),
        r.perUnit(),
        r.stockLength().isPresent() ? Json.mm(r.stockLength().getAsDouble()) : "",
        r.needed(),
        r.spare(),
        r.price().<Object>map(p -> p).orElse("no price"),
        r.cost().<Object>map(c -> c).orElse(""),
        r.spareRule());
  }

  private static List<Object> part(Part part) {
    return List.of(
        part.label(),
        part.kind().word(),
        part.count(),
        Json.mm(part.length()),
        Json.mm(part.width()),
        part.id().substring(0, part.id().lastIndexOf('/')),
        part.cuts().stream().map(c -> c.words().toString()).collect(Collectors.joining("; ")),
        part.why().toString());
  }

  private static void sheet(
      Workbook book, String name, List<String> head, Stream<? extends List<?>> rows) {
    Worksheet sheet = book.newWorksheet(name);
    for (int c = 0; c < head.size(); c++) {
      sheet.value(0, c, head.get(c));
      sheet.style(0, c).bold().set();
      boolean text = WIDE_COLUMNS.contains(head.get(c));
      sheet.width(c, text ? WIDE : NARROW);
    }
    int r = 0;
    for (List<?> row : rows.toList()) {
      r++;
      for (int c = 0; c < row.size(); c++) {
        if (row.get(c) instanceof Number number) {
          sheet.value(r, c, number);
        } else {
          sheet.value(r, c, row.get(c).toString());
        }
      }
    }
    sheet.freezePane(0, 1);
    sheet.setAutoFilter(0, 0, r, head.size() - 1);
    sheet.pageOrientation("landscape");
    sheet.fitToWidth((short) 1);
    sheet.fitToHeight((short) 0);
    sheet.repeatRows(0);
  }
}
