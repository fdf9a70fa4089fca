package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.underlee.kit.StockItem;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;

/** Counts every part once, in the order of the kit's stock list. */
public final class TakeoffBuilder {
  /** Cut lengths are given to a tenth of a millimetre, rounded down so that pieces fit. */
  private static final double CUT_STEP = 1e-4;

  private final Layout layout;
  private final List<Takeoff.Line> lines = new ArrayList<>();
  private final List<Takeoff.Cut> cuts = new ArrayList<>();
  private final List<Takeoff.Stock> stock = new ArrayList<>();
  private final Map<String, Integer> bound = new LinkedHashMap<>();

  private TakeoffBuilder(Layout layout) {
    this.layout = layout;
  }

  public static Takeoff of(Layout layout) {
    TakeoffBuilder builder = new TakeoffBuilder(layout);
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
        Map.copyOf(builder.bound));
  }

  private void count(StockItem item, List<Part> parts) {
    boolean byLength = item.isSoldByLength();
    double quantity =
        byLength
            ? parts.stream().mapToDouble(Part::length).sum()
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

  private void cut(StockItem item, List<Part> parts) {
    Map<Double, List<Part>> sizes = new TreeMap<>(Comparator.reverseOrder());
    for (Part part : parts) {
      sizes.computeIfAbsent(cutLength(part), l -> new ArrayList<>()).add(part);
    }
    sizes.forEach(
        (length, same) -> cuts.add(new Takeoff.Cut(item.id(), length, same.size(), places(same))));
    List<Double> lengths = parts.stream().map(TakeoffBuilder::cutLength).toList();
    CuttingStock.Plan plan = CuttingStock.plan(lengths, item.stockLengths(), item.kerf());
    bound.put(item.id(), plan.bound());
    Map<Stick, Integer> same = new LinkedHashMap<>();
    plan.sticks().forEach(s -> same.merge(s, 1, Integer::sum));
    same.forEach(
        (s, n) ->
            stock.add(new Takeoff.Stock(item.id(), s.stockLength(), n, s.cuts(), s.offcut())));
  }

  private static double cutLength(Part part) {
    return Math.floor(part.length() / CUT_STEP + 1e-6) * CUT_STEP;
  }

  /** Where pieces go: their ids without the part's own name, each once. */
  private static List<String> places(List<Part> parts) {
    return parts.stream()
        .map(p -> p.id().substring(0, p.id().lastIndexOf('/')))
        .distinct()
        .toList();
  }
}
