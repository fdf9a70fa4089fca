package org.underlee.writeback;

import java.util.List;

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

  /** What a quantity measures. */
  public enum QuantityKind {
    COUNT,
    LENGTH,
    AREA
  }
}
