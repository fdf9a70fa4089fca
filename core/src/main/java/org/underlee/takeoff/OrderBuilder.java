package org.underlee.takeoff;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.underlee.kit.StockItem;
import org.underlee.takeoff.PriceList.Article;

/** Turns pieces and lengths into what a shop sells. */
final class OrderBuilder {
  private static final int PERCENT = 100;

  private OrderBuilder() {}

  /** How many on top of what is needed, by the kit's share, rounded up. */
  static int spares(StockItem item, int needed) {
    return (int) Math.ceil(needed * item.shop().spareShare() - 1e-9);
  }

  static String rule(StockItem item, String how) {
    long percent = Math.round(item.shop().spareShare() * PERCENT);
    return (percent == 0 ? "none" : String.format(Locale.ROOT, "%d %%%s", percent, how))
        + " ("
        + item.shop().source()
        + ")";
  }

  /** What is counted by the piece. */
  static List<Order.Row> pieces(StockItem item, int needed, int onHand, List<Article> articles) {
    int spare = spares(item, needed);
    int buy = Math.max(0, needed + spare - onHand);
    String rule = rule(item, " of the pieces");
    return rows(item, OptionalDouble.empty(), needed, spare, buy, rule, articles);
  }

  /**
   * What is sold by the length.
   *
   * @param needed lengths to buy by the cutting plan
   * @param spare lengths to buy on top
   */
  static List<Order.Row> lengths(
      StockItem item,
      Map<Double, Integer> needed,
      Map<Double, Integer> spare,
      String rule,
      List<Article> articles) {
    TreeMap<Double, Integer> all = new TreeMap<>(needed);
    spare.forEach((length, n) -> all.merge(length, n, Integer::sum));
    List<Order.Row> rows = new ArrayList<>();
    all.forEach(
        (length, n) ->
            rows.addAll(
                rows(
                    item,
                    OptionalDouble.of(length),
                    needed.getOrDefault(length, 0),
                    spare.getOrDefault(length, 0),
                    n,
                    rule,
                    PriceList.ofLength(articles, length))));
    return rows;
  }

  private static List<Order.Row> rows(
      StockItem item,
      OptionalDouble length,
      int needed,
      int spare,
      int buy,
      String rule,
      List<Article> articles) {
    List<Order.Row> rows = new ArrayList<>();
    if (articles.isEmpty()) {
      int per = item.shop().pieces();
      int units = (buy + per - 1) / per;
      rows.add(
          row(item, item.shop().unit(), per, length, needed, spare, units, rule, Optional.empty()));
    } else {
      cheapest(articles, buy)
          .forEach(
              (a, units) -> {
                // what is needed stands in one row, however many articles it is bought in
                boolean first = rows.isEmpty();
                rows.add(
                    row(
                        item,
                        a.unit(),
                        a.pack(),
                        length,
                        first ? needed : 0,
                        first ? spare : 0,
                        units,
                        rule,
                        Optional.of(a.price())));
              });
    }
    return rows;
  }

  private static Order.Row row(
      StockItem item,
      String unit,
      int per,
      OptionalDouble length,
      int needed,
      int spare,
      int units,
      String rule,
      Optional<BigDecimal> price) {
    return new Order.Row(
        item.id(), item.description(), unit, per, length, needed, spare, units, rule, price);
  }

  /** The packs that hold at least so many at least cost: a knapsack, by the number of pieces. */
  static Map<Article, Integer> cheapest(List<Article> articles, int pieces) {
    BigDecimal[] cost = new BigDecimal[pieces + 1];
    Article[] last = new Article[pieces + 1];
    cost[0] = BigDecimal.ZERO;
    for (int n = 1; n <= pieces; n++) {
      for (Article article : articles) {
        BigDecimal sum = cost[Math.max(0, n - article.pack())].add(article.price());
        if (cost[n] == null || sum.compareTo(cost[n]) < 0) {
          cost[n] = sum;
          last[n] = article;
        }
      }
    }
    Map<Article, Integer> bought = new LinkedHashMap<>();
    for (int n = pieces; n > 0; n -= last[n].pack()) {
      bought.merge(last[n], 1, Integer::sum);
    }
    if (pieces == 0) {
      bought.put(articles.get(0), 0);
    }
    return bought;
  }
}
