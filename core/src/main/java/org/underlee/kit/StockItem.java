package org.underlee.kit;

import java.util.List;

/**
 * Something to buy: a length, a fitting, a fastener or a roll.
 *
 * @param id {@code side-rail}
 * @param description as on a shopping list
 * @param unit what it is counted in when bought: {@code length}, {@code piece}, {@code roll}
 * @param stockLengths the lengths it is sold in, metres, shortest first; empty for what is counted
 *     by the piece
 * @param kerf lost at each cut, metres: zero for snips
 * @param material the kit material's id
 * @param thickness of its sheet, metres
 * @param shop how it is sold and cut
 * @param source where the numbers come from
 */
public record StockItem(
    String id,
    String description,
    String unit,
    List<Double> stockLengths,
    double kerf,
    String material,
    double thickness,
    Shop shop,
    String source) {
  public StockItem {
    stockLengths = stockLengths.stream().sorted().toList();
  }

  public boolean isSoldByLength() {
    return !stockLengths.isEmpty();
  }
}
