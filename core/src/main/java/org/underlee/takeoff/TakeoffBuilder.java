package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.underlee.finding.InputException;
import org.underlee.finding.StopSign;
import org.underlee.kit.StockItem;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;

/** Counts every part once, in the order of the kit's stock list. */
public final class TakeoffBuilder {
  private final Layout layout;
  private final Buying buying;
  private final StopSign stop;
  private final List<Takeoff.Line> lines = new ArrayList<>();
  private final List<Takeoff.Cut> cuts = new ArrayList<>();
  private final List<Takeoff.Stock> stock = new ArrayList<>();
  private final Map<String, Takeoff.Bought> bought = new LinkedHashMap<>();
  private final Map<String, Takeoff.Lengths> lengths = new LinkedHashMap<>();
  private final List<Order.Row> rows = new ArrayList<>();
  private final List<Order.Alternative> alternatives = new ArrayList<>();

  private TakeoffBuilder(Layout layout, Buying buying, StopSign stop) {
    this.layout = layout;
    this.buying = buying;
    this.stop = stop;
  }

  /** As {@link #of(Layout, Buying)}, where nothing is known of prices and of what is on hand. */
  public static Takeoff of(Layout layout) {
    return of(layout, Buying.PLAIN);
  }

  /**
   * Counts, cuts and orders.
   *
   * @throws org.underlee.finding.InputException when a user's list does not say which length is
   *     meant
   */
  public static Takeoff of(Layout layout, Buying buying) {
    Map<String, List<Part>> byItem =
        layout.parts().stream().collect(Collectors.groupingBy(Part::item));
    StopSign stop = StopSign.here();
    TakeoffBuilder builder = new TakeoffBuilder(layout, buying, stop);
    layout.kit().stock().parallelStream()
        .map(
            item -> {
              List<Part> parts = byItem.getOrDefault(item.id(), List.of());
              return counted(new TakeoffBuilder(layout, buying, stop), item, parts);
            })
        .toList()
        .forEach(counted -> builder.add(counted.get()));
    return new Takeoff(
        List.copyOf(builder.lines),
        List.copyOf(builder.cuts),
        List.copyOf(builder.stock),
        Map.copyOf(builder.bought),
        Map.copyOf(builder.lengths),
        new Order(builder.rows, builder.alternatives, buying.prices().map(PriceList::currency)));
  }

  /** Refused or not, only when it is asked for: the first in the kit's order is the one told. */
  private static Supplier<TakeoffBuilder> counted(
      TakeoffBuilder own, StockItem item, List<Part> parts) {
    try {
      if (!parts.isEmpty()) {
        own.count(item, parts);
      }
      return () -> own;
    } catch (InputException e) {
      return () -> {
        throw e;
      };
    }
  }

  /** What comes after, counted for itself. */
  private void add(TakeoffBuilder next) {
    lines.addAll(next.lines);
    cuts.addAll(next.cuts);
    stock.addAll(next.stock);
    bought.putAll(next.bought);
    lengths.putAll(next.lengths);
    rows.addAll(next.rows);
    alternatives.addAll(next.alternatives);
  }

  private void count(StockItem item, List<Part> parts) {
    boolean byLength = item.isSoldByLength();
    int pieces = parts.stream().mapToInt(Part::count).sum();
    double quantity = byLength ? parts.stream().mapToDouble(Part::cutLength).sum() : pieces;
    lines.add(
        new Takeoff.Line(
            item.id(),
            item.description(),
            byLength ? "m" : "piece",
            quantity,
            parts.stream().map(Part::id).toList()));
    List<PriceList.Article> articles =
        buying.prices().map(p -> p.of(layout.kit(), item)).orElse(List.of());
    if (byLength) {
      cuts(item, parts);
      cut(item, parts, articles);
    } else {
      int onHand = buying.onHand(item.id()).stream().mapToInt(OnHand::count).sum();
      rows.addAll(OrderBuilder.pieces(item, pieces, onHand, articles));
    }
  }

  /** What makes pieces equal: they can be cut in one setting. */
  private record Size(PartKind kind, double length, OptionalDouble sheetWidth) {
    static final Comparator<Size> LONGEST_FIRST =
        Comparator.comparing(Size::kind)
            .thenComparingDouble(s -> -s.length)
            .thenComparingDouble(s -> -s.sheetWidth.orElse(0));

    static Size of(Part part) {
      double[] width = part.sheetWidth().stream().map(Lengths::toCut).toArray();
      return new Size(
          part.kind(),
          Lengths.toCut(part.cutLength()),
          width.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(width[0]));
    }
  }

  private void cuts(StockItem item, List<Part> parts) {
    Map<Size, List<Part>> sizes = new TreeMap<>(Size.LONGEST_FIRST);
    for (Part part : parts) {
      sizes.computeIfAbsent(Size.of(part), l -> new ArrayList<>()).add(part);
    }
    sizes.forEach(
        (size, same) ->
            cuts.add(
                new Takeoff.Cut(
                    item.id(),
                    size.kind,
                    size.length,
                    size.sheetWidth,
                    same.size(),
                    places(same))));
  }

  private void cut(StockItem item, List<Part> parts, List<PriceList.Article> articles) {
    List<Stick.Piece> pieces = parts.stream().map(TakeoffBuilder::piece).toList();
    ItemCutting cutting = new ItemCutting(item, pieces, articles, buying.onHand(item.id()), stop);
    CuttingStock.Plan plan = cutting.plan();
    Map<Stick, Integer> same = new LinkedHashMap<>();
    plan.sticks().forEach(s -> same.merge(s, 1, Integer::sum));
    same.forEach(
        (s, n) ->
            stock.add(
                new Takeoff.Stock(
                    item.id(), s.stockLength(), n, s.blocks(), s.offcut(), s.onHand())));
    bought.put(item.id(), cutting.bought(plan));
    lengths.put(item.id(), LengthsBuilder.of(item, parts, plan));
    rows.addAll(cutting.order(plan));
    if (buying.prices().isPresent()) {
      alternatives.addAll(cutting.alternatives());
    }
  }

  private static Stick.Piece piece(Part part) {
    return new Stick.Piece(
        Lengths.toCut(part.cutLength()), part.sheetWidth().stream().map(Lengths::toCut).sum());
  }

  /** Where pieces go: their ids without the part's own name, each once. */
  private static List<String> places(List<Part> parts) {
    return parts.stream()
        .map(p -> p.id().substring(0, p.id().lastIndexOf('/')))
        .distinct()
        .toList();
  }
}
