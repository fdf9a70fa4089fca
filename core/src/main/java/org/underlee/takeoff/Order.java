package org.underlee.takeoff;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What to ask a shop for, in its own units, spares included.
 *
 * @param rows one for each article
 * @param alternatives what the same would take in one stock length alone
 * @param currency of all prices, where there are any
 */
public record Order(List<Row> rows, List<Alternative> alternatives, Optional<String> currency) {
  public Order {
    rows = List.copyOf(rows);
    alternatives = List.copyOf(alternatives);
  }

  /**
   * An article to order.
   *
   * @param unit the shop's: {@code box}
   * @param perUnit pieces or lengths in one
   * @param stockLength metres, of what is sold by the length
   * @param needed pieces or lengths that the cutting plan or the assembly takes
   * @param spare pieces or lengths on top
   * @param units to order
   * @param spareRule how the spares were counted, and by what source
   * @param price of one unit, where it is known
   */
  public record Row(
      String item,
      String description,
      String unit,
      int perUnit,
      OptionalDouble stockLength,
      int needed,
      int spare,
      int units,
      String spareRule,
      Optional<BigDecimal> price) {
    /** Nothing where there is no price. */
    public Optional<BigDecimal> cost() {
      return price.map(p -> p.multiply(BigDecimal.valueOf(units)));
    }
  }

  /**
   * An item bought in one length alone, without spares.
   *
   * @param pieces lengths to buy
   * @param cost where that length has a price
   */
  public record Alternative(
      String item, double stockLength, int pieces, Optional<BigDecimal> cost) {}

  /** Of what has a price; see {@link #unpriced()} for what is not in it. */
  public BigDecimal total() {
    return rows.stream().flatMap(r -> r.cost().stream()).reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  /**
   * What is known of the cost.
   *
   * @param unpriced articles that are not in it, because they have no price
   */
  public record Cost(BigDecimal amount, String currency, int unpriced) {}

  /** Where there are prices. */
  public Optional<Cost> cost() {
    return currency.map(c -> new Cost(total(), c, unpriced().size()));
  }

  public boolean isPriced() {
    return currency.isPresent();
  }

  /** What has no price, and is in no sum. */
  public List<Row> unpriced() {
    return rows.stream().filter(r -> r.price().isEmpty() && r.units() > 0).toList();
  }
}
