package org.underlee.takeoff;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.kit.Kit;
import org.underlee.kit.StockItem;
import org.underlee.units.Lengths;

/**
 * What things cost, as the user's list has it.
 *
 * @param currency three letters: {@code USD}
 */
public record PriceList(String currency, List<Article> articles) {
  /** A price list is in millimetres or inches; lengths nearer than this are the same. */
  private static final double SAME_LENGTH = 0.001;

  public PriceList {
    articles = List.copyOf(articles);
  }

  /**
   * A row: one article of a shop.
   *
   * @param kit it is for; any when empty
   * @param item of the kit's stock
   * @param unit what the shop counts it in: {@code box}
   * @param length metres, of what is sold by the length
   * @param pack how many pieces or lengths are in one unit
   * @param price of one unit
   * @param place of the row, for messages
   */
  public record Article(
      Optional<String> kit,
      String item,
      String unit,
      OptionalDouble length,
      int pack,
      BigDecimal price,
      Place place) {
    /** For one piece or length, for comparing. */
    double priceOfOne() {
      return price.doubleValue() / pack;
    }
  }

  /** The articles for an item of a kit; a row without a length is for the only one there is. */
  List<Article> of(Kit kit, StockItem item) {
    return articles.stream()
        .filter(a -> a.item().equals(item.id()) && a.kit().map(kit.id()::equals).orElse(true))
        .map(a -> item.isSoldByLength() ? asInKit(a, item) : a)
        .toList();
  }

  /** A length as the kit has it, where it has one that is the same in a list. */
  private static Article asInKit(Article a, StockItem item) {
    if (a.length().isEmpty()) {
      return withLength(a, item);
    }
    double own = a.length().getAsDouble();
    double length =
        item.stockLengths().stream()
            .filter(l -> Math.abs(l - own) < SAME_LENGTH)
            .findFirst()
            .orElse(own);
    OptionalDouble same = OptionalDouble.of(length);
    return new Article(a.kit(), a.item(), a.unit(), same, a.pack(), a.price(), a.place());
  }

  private static Article withLength(Article a, StockItem item) {
    if (item.stockLengths().size() > 1) {
      throw new InputException(
          a.place(),
          "the price of " + item.id() + " does not say for which length",
          "Fill the column \"length\": the kit has it in "
              + String.join(", ", item.stockLengths().stream().map(Lengths::millimetres).toList())
              + ".");
    }
    OptionalDouble only = OptionalDouble.of(item.stockLengths().get(0));
    return new Article(a.kit(), a.item(), a.unit(), only, a.pack(), a.price(), a.place());
  }

  /** Those of one length. */
  static List<Article> ofLength(List<Article> articles, double length) {
    return articles.stream()
        .filter(a -> Math.abs(a.length().orElse(0) - length) < SAME_LENGTH)
        .toList();
  }
}
