package org.underlee.writeback;

import java.util.List;
import org.underlee.takeoff.Takeoff;

/**
 * One line of the bill of quantities.
 *
 * @param item the kit's stock item
 * @param unit what the quantity counts, in words: {@code sheet}
 * @param quantity metres, square metres, or whole pieces, by its kind
 * @param partIds the parts that the line is for
 */
public record BillLine(
    String item,
    String description,
    String unit,
    double quantity,
    QuantityKind kind,
    List<String> partIds) {
  public BillLine {
    partIds = List.copyOf(partIds);
  }

  /** The lines of a takeoff: metres for what is sold by length, else pieces. */
  public static List<BillLine> of(Takeoff takeoff) {
    return takeoff.lines().stream().map(BillLine::of).toList();
  }

  private static BillLine of(Takeoff.Line line) {
    QuantityKind kind = line.unit().equals("m") ? QuantityKind.LENGTH : QuantityKind.COUNT;
    return new BillLine(
        line.item(), line.description(), line.unit(), line.quantity(), kind, line.parts());
  }

  /** What a quantity measures. */
  public enum QuantityKind {
    COUNT,
    LENGTH,
    AREA
  }
}
