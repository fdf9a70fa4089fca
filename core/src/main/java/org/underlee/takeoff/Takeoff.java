package org.underlee.takeoff;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.underlee.layout.PartKind;

/**
 * What to buy and cut for a layout.
 *
 * @param lines one a stock item: what is in the assembly, net
 * @param cuts the cut list, longest first in each item
 * @param stock what to buy by the length, with its cutting pattern
 * @param bought for each item sold by length, how much is bought and what is proven of it
 */
public record Takeoff(
    List<Line> lines, List<Cut> cuts, List<Stock> stock, Map<String, Bought> bought) {

  /**
   * What is in the assembly of one item.
   *
   * @param unit {@code m} for what is sold by length, else {@code piece}
   * @param parts ids of the parts counted, each part in one line
   */
  public record Line(
      String item, String description, String unit, double quantity, List<String> parts) {}

  /**
   * Equal pieces to cut.
   *
   * @param kind what they are
   * @param length metres, to a tenth of a millimetre
   * @param sheetWidth of the flat sheet, for pieces that are folded
   * @param bays where they go: bays, joist lines or fields
   */
  public record Cut(
      String item,
      PartKind kind,
      double length,
      OptionalDouble sheetWidth,
      int count,
      List<String> bays) {}

  /**
   * What to buy of one item, cut to one pattern.
   *
   * @param pieces how many sticks are cut to this pattern
   * @param offcut left of each, metres
   */
  public record Stock(
      String item, double stockLength, int pieces, List<Double> pattern, double offcut) {}

  /**
   * How much is bought of one item.
   *
   * @param length metres
   * @param least metres that any way of cutting is proven to need
   */
  public record Bought(double length, double least) {
    public boolean isProvenLeast() {
      return length <= least;
    }
  }

  /** Metres bought of an item. */
  public double bought(String item) {
    return stock.stream()
        .filter(s -> s.item().equals(item))
        .mapToDouble(s -> s.stockLength() * s.pieces())
        .sum();
  }
}
