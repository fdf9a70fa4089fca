package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.underlee.framing.Storey;
import org.underlee.kit.StockItem;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Part;

/**
 * What of one item is in one place. At each level every part is in one share, so that the shares of
 * a level add up to the whole.
 *
 * @param place {@code deck-1/field-1/B3}, or the storey's name
 * @param unit as in the takeoff's lines
 * @param quantity as there: metres cut, or pieces
 * @param parts ids of the parts counted
 */
public record Share(
    Level level, String place, String item, String unit, double quantity, List<String> parts) {
  /** How large the places are. */
  public enum Level {
    BAY,
    FIELD,
    DECK,
    STOREY;

    /** The word used in files. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Place of parts that serve more than one bay. */
  private static final String NO_ONE_BAY = "/-";

  public Share {
    parts = List.copyOf(parts);
  }

  /** The shares of a layout: bays first, storeys last; items in the order of the kit. */
  public static List<Share> of(Layout layout) {
    List<Share> shares = new ArrayList<>();
    shares.addAll(at(Level.BAY, layout, f -> p -> bay(f, p)));
    shares.addAll(at(Level.FIELD, layout, f -> p -> f.field()));
    shares.addAll(at(Level.DECK, layout, f -> p -> f.deck()));
    shares.addAll(at(Level.STOREY, layout, f -> p -> storey(f)));
    return shares;
  }

  private static String bay(FieldLayout field, Part part) {
    return part.bay().map(b -> field.field() + "/" + b).orElse(field.field() + NO_ONE_BAY);
  }

  private static String storey(FieldLayout field) {
    return field.storey().map(Storey::name).orElse("no storey");
  }

  private static List<Share> at(
      Level level, Layout layout, Function<FieldLayout, Function<Part, String>> place) {
    Map<String, Map<String, List<Part>>> found = new LinkedHashMap<>();
    for (FieldLayout field : layout.fields()) {
      for (Part part : field.parts()) {
        found
            .computeIfAbsent(place.apply(field).apply(part), p -> new LinkedHashMap<>())
            .computeIfAbsent(part.item(), i -> new ArrayList<>())
            .add(part);
      }
    }
    List<Share> shares = new ArrayList<>();
    found.forEach(
        (where, items) -> {
          for (StockItem item : layout.kit().stock()) {
            List<Part> parts = items.getOrDefault(item.id(), List.of());
            if (!parts.isEmpty()) {
              shares.add(share(level, where, item, parts));
            }
          }
        });
    return shares;
  }

  private static Share share(Level level, String place, StockItem item, List<Part> parts) {
    boolean byLength = item.isSoldByLength();
    double quantity =
        byLength
            ? parts.stream().mapToDouble(Part::cutLength).sum()
            : parts.stream().mapToInt(Part::count).sum();
    return new Share(
        level,
        place,
        item.id(),
        byLength ? "m" : "piece",
        quantity,
        parts.stream().map(Part::id).toList());
  }
}
