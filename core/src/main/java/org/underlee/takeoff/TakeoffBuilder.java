package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.underlee.kit.StockItem;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/** Counts every part once, in the order of the kit's stock list. */
public final class TakeoffBuilder {
  /** Cut lengths are given to a tenth of a millimetre, rounded down so that pieces fit. */
  private static final double CUT_STEP = 1e-4;

  private final List<Takeoff.Line> lines = new ArrayList<>();
  private final List<Takeoff.Cut> cuts = new ArrayList<>();
  private final List<Takeoff.Stock> stock = new ArrayList<>();
  private final Map<String, Takeoff.Bought> bought = new LinkedHashMap<>();

  private TakeoffBuilder() {}

  public static Takeoff of(Layout layout) {
    TakeoffBuilder builder = new TakeoffBuilder();
    for (StockItem item : layout.kit().stock()) {
      List<Part> parts = layout.parts().stream().filter(p -> p.item().equals(item.id())).toList();
      if (!parts.isEmpty()) {
        builder.count(item, parts);
      }
    }
    return new Takeoff(
        List.copyOf(builder.lines),
        List.copyOf(builder.cuts),
        List.copyOf(builder.stock),
        Map.copyOf(builder.bought));
  }

  private void count(StockItem item, List<Part> parts) {
    boolean byLength = item.isSoldByLength();
    double quantity =
        byLength
            ? parts.stream().mapToDouble(Part::cutLength).sum()
            : parts.stream().mapToInt(Part::count).sum();
    lines.add(
        new Takeoff.Line(
            item.id(),
            item.description(),
            byLength ? "m" : "piece",
            quantity,
            parts.stream().map(Part::id).toList()));
    if (byLength) {
      cut(item, parts);
    }
  }

  /** What makes pieces equal: they can be cut in one setting. */
  private record Size(PartKind kind, double length, OptionalDouble sheetWidth) {
    static final Comparator<Size> LONGEST_FIRST =
        Comparator.comparing(Size::kind)
            .thenComparingDouble(s -> -s.length)
            .thenComparingDouble(s -> -s.sheetWidth.orElse(0));

    static Size of(Part part) {
      double[] width = part.sheetWidth().stream().map(TakeoffBuilder::toStep).toArray();
      return new Size(
          part.kind(),
          toStep(part.cutLength()),
          width.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(width[0]));
    }
  }

  private void cut(StockItem item, List<Part> parts) {
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
    List<Double> lengths = parts.stream().map(p -> toStep(p.cutLength())).toList();
    CuttingStock.Plan plan = CuttingStock.plan(lengths, item.stockLengths(), item.kerf());
    bought.put(item.id(), new Takeoff.Bought(plan.cost(), plan.bound()));
    Map<Stick, Integer> same = new LinkedHashMap<>();
    plan.sticks().forEach(s -> same.merge(s, 1, Integer::sum));
    same.forEach(
        (s, n) ->
            stock.add(new Takeoff.Stock(item.id(), s.stockLength(), n, s.cuts(), s.offcut())));
  }

  private static double toStep(double metres) {
    return Math.floor(metres / CUT_STEP + 1e-6) * CUT_STEP;
  }

  /** Where pieces go: their ids without the part's own name, each once. */
  private static List<String> places(List<Part> parts) {
    return parts.stream()
        .map(p -> p.id().substring(0, p.id().lastIndexOf('/')))
        .distinct()
        .toList();
  }
}
