package org.underlee.takeoff;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.underlee.finding.InputException;
import org.underlee.finding.StopSign;
import org.underlee.kit.StockItem;
import org.underlee.takeoff.CuttingStock.Offer;
import org.underlee.takeoff.CuttingStock.Plan;
import org.underlee.takeoff.CuttingStock.Saw;
import org.underlee.takeoff.PriceList.Article;
import org.underlee.takeoff.Stick.Piece;

/**
 * How the pieces of one item are cut from what is sold and what is on hand. Where the price list
 * has lengths that hold every piece, those are bought, at least cost; else the kit's own, at least
 * length.
 */
final class ItemCutting {
  private final StockItem item;
  private final List<Piece> pieces;
  private final List<Article> articles;
  private final List<OnHand> onHand;
  private final StopSign stop;
  private final boolean byPrice;
  private final List<Offer> sold;

  ItemCutting(
      StockItem item,
      List<Piece> pieces,
      List<Article> articles,
      List<OnHand> onHand,
      StopSign stop) {
    this.stop = stop;
    this.item = item;
    this.pieces = pieces;
    this.articles = articles;
    this.onHand = onHand;
    double priced = articles.stream().mapToDouble(a -> a.length().orElse(0)).max().orElse(0);
    this.byPrice = priced >= longest();
    this.sold =
        byPrice
            ? articles.stream().map(a -> new Offer(a.length().orElse(0), a.priceOfOne())).toList()
            : item.stockLengths().stream().map(l -> new Offer(l, l)).toList();
  }

  private double longest() {
    return pieces.stream().mapToDouble(Piece::length).max().orElseThrow();
  }

  private Saw saw() {
    return new Saw(item.kerf(), item.shop().endTrim(), item.shop().ripWidth());
  }

  Plan plan() {
    List<Offer> offers = new ArrayList<>(sold);
    for (OnHand own : onHand) {
      double length =
          own.length()
              .orElseThrow(
                  () ->
                      new InputException(
                          own.place(),
                          "it is not said how long the " + item.id() + " on hand is",
                          "Fill the column \"length\"."));
      offers.add(new Offer(length, 0, own.count()));
    }
    return CuttingStock.cheapest(pieces, offers, saw(), stop);
  }

  Takeoff.Bought bought(Plan plan) {
    double length =
        plan.sticks().stream().filter(s -> !s.onHand()).mapToDouble(Stick::stockLength).sum();
    Takeoff.Measure measure = byPrice ? Takeoff.Measure.PRICE : Takeoff.Measure.LENGTH;
    return new Takeoff.Bought(length, measure, plan.cost(), plan.bound());
  }

  List<Order.Row> order(Plan plan) {
    return item.shop().isUnrolled() ? orderUnrolled(plan) : orderPieces(plan);
  }

  /** Spare is a share of the length that is cut; what is left of the coils gives it first. */
  private List<Order.Row> orderUnrolled(Plan plan) {
    double bought = plan.sticks().stream().mapToDouble(Stick::stockLength).sum();
    double left = plan.sticks().stream().mapToDouble(Stick::offcut).sum();
    double spare = item.shop().spareShare() * (bought - left);
    double lacking = Math.max(0, spare - left);
    Map<Double, Integer> more = new TreeMap<>();
    if (lacking > 0) {
      double length = sold.stream().mapToDouble(Offer::length).max().orElseThrow();
      double unit =
          sold.stream().mapToDouble(Offer::length).filter(l -> l >= lacking).min().orElse(length);
      more.put(unit, (int) Math.ceil(lacking / unit));
    }
    String how =
        String.format(
            Locale.ROOT,
            " of %.1f m: %.1f m, %.1f m of it from what is left",
            bought - left,
            spare,
            spare - lacking);
    return OrderBuilder.lengths(item, byLength(plan), more, OrderBuilder.rule(item, how), articles);
  }

  /** Spares are as long as the longest piece; offcuts that are long enough give them first. */
  private List<Order.Row> orderPieces(Plan plan) {
    int spares = OrderBuilder.spares(item, pieces.size());
    double longest = longest();
    int fromOffcuts = 0;
    for (Stick stick : plan.sticks()) {
      for (double left = stick.offcut(); left >= longest; left -= longest + item.kerf()) {
        fromOffcuts++;
      }
    }
    fromOffcuts = Math.min(spares, fromOffcuts);
    Piece spare = pieces.stream().filter(p -> p.length() == longest).findFirst().orElseThrow();
    Plan more =
        CuttingStock.cheapest(Collections.nCopies(spares - fromOffcuts, spare), sold, saw(), stop);
    String how =
        String.format(
            Locale.ROOT,
            " of %d pieces: %d of the longest, %d of them from offcuts",
            pieces.size(),
            spares,
            fromOffcuts);
    return OrderBuilder.lengths(
        item, byLength(plan), byLength(more), OrderBuilder.rule(item, how), articles);
  }

  private static Map<Double, Integer> byLength(Plan plan) {
    Map<Double, Integer> sticks = new TreeMap<>();
    plan.sticks().stream()
        .filter(s -> !s.onHand())
        .forEach(s -> sticks.merge(s.stockLength(), 1, Integer::sum));
    return sticks;
  }

  /** In one length alone, without spares and without what is on hand. */
  List<Order.Alternative> alternatives() {
    TreeSet<Double> lengths = new TreeSet<>(item.stockLengths());
    sold.forEach(o -> lengths.add(o.length()));
    List<Order.Alternative> all = new ArrayList<>();
    for (double length : lengths) {
      if (length >= longest()) {
        int sticks =
            CuttingStock.cheapest(pieces, List.of(new Offer(length, length)), saw(), stop)
                .sticks()
                .size();
        List<Article> own = PriceList.ofLength(articles, length);
        all.add(new Order.Alternative(item.id(), length, sticks, cost(own, sticks)));
      }
    }
    return all;
  }

  private static Optional<BigDecimal> cost(List<Article> articles, int sticks) {
    return articles.isEmpty()
        ? Optional.empty()
        : OrderBuilder.cheapest(articles, sticks).entrySet().stream()
            .map(e -> e.getKey().price().multiply(BigDecimal.valueOf(e.getValue())))
            .reduce(BigDecimal::add);
  }
}
