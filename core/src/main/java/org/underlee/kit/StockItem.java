package org.underlee.kit;

import java.util.List;
import java.util.Optional;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Something to buy: a length, a fitting, a fastener or a roll.
 *
 * @param id {@code side-rail}
 * @param description as on a shopping list, its sizes as in files
 * @param descriptionInInches the same for whoever buys in inches, if the kit tells it
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
    Optional<String> descriptionInInches,
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

  /** As on the shopping list of someone who measures so. */
  public String description(UnitSystem units) {
    return units == UnitSystem.METRIC ? description : descriptionInInches.orElse(description);
  }

  public boolean isSoldByLength() {
    return !stockLengths.isEmpty();
  }
}
