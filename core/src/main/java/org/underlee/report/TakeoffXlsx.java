package org.underlee.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.underlee.layout.Part;
import org.underlee.run.Design;
import org.underlee.takeoff.Takeoff;

/**
 * Writes a takeoff as a workbook: one sheet each for the bill, the cuts, what to buy and the parts.
 * Numbers are numbers, the header stays in view, columns can be filtered, pages print in landscape.
 * The same design gives the same bytes.
 */
public final class TakeoffXlsx {
  private static final double NARROW = 12;
  private static final double WIDE = 60;

  private TakeoffXlsx() {}

  public static byte[] write(Design design) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (Workbook book = new Workbook(bytes, "Underlee", null)) {
      Takeoff takeoff = design.takeoff();
      sheet(
          book,
          "Bill",
          List.of("item", "description", "quantity", "unit"),
          takeoff.lines().stream()
              .map(
                  l ->
                      List.of(l.item(), l.description(), Json.rounded(l.quantity(), 3), l.unit())));
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
          List.of("item", "count", "stock length mm", "offcut mm", "cut to mm"),
          takeoff.stock().stream()
              .map(
                  s ->
                      List.of(
                          s.item(),
                          s.pieces(),
                          Json.mm(s.stockLength()),
                          Json.mm(s.offcut()),
                          pattern(s))));
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

  private static String pattern(Takeoff.Stock stock) {
    return stock.pattern().stream()
        .map(l -> Json.mm(l).toPlainString())
        .collect(Collectors.joining(" + "));
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
      boolean text =
          List.of("description", "where", "why", "cut to mm", "cuts mm").contains(head.get(c));
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
