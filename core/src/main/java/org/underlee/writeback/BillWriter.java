package org.underlee.writeback;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.takeoff.Order;

/**
 * The bill of quantities: a cost schedule with one root item, an item for each line with its
 * quantity, and the elements that the line is for. Where there is a price list, what is ordered for
 * a line is nested in it, counted in the shop's units, each with the price of one; the root has the
 * sum, and its name says how many have no price.
 *
 * <p>An IFC2X3 cost item has no quantities. There the quantity is an IfcElementQuantity that the
 * cost item is defined by, which that schema allows for any object, and the description says it in
 * words.
 */
final class BillWriter {
  private static final String NAME = "Under-deck drainage: bill of quantities";

  /** Millimetres, in words for a person; the quantity itself is not rounded. */
  private static final int DECIMALS = 3;

  private final Draft draft;
  private final Definitions definitions;
  private final Map<String, PlacedPart> parts;

  BillWriter(Draft draft, Definitions definitions, Map<String, PlacedPart> parts) {
    this.draft = draft;
    this.definitions = definitions;
    this.parts = parts;
  }

  /** The schedule, where there are lines. */
  Optional<Value> write(List<BillLine> lines, Order order) {
    if (lines.isEmpty()) {
      return Optional.empty();
    }
    Value schedule = schedule(order);
    Value root = root(order);
    // IFC2X3 has a relationship of its own for this.
    draft.relate(
        draft.ifc2x3() ? "IfcRelSchedulesCostItems" : "IfcRelAssignsToControl",
        id("schedules", "root"),
        Value.list(root),
        Value.UNSET,
        schedule);
    List<Value> items = new ArrayList<>();
    for (BillLine line : lines) {
      String ordinal = "line-" + (items.size() + 1);
      Value item = line(line, ordinal);
      items.add(item);
      if (order.isPriced()) {
        ordered(item, ordinal, order, line.item());
      }
    }
    draft.relate("IfcRelNests", id("nests-items", "root"), root, Value.list(items));
    return Optional.of(schedule);
  }

  private Value root(Order order) {
    Value name = Value.label(NAME);
    return order
        .currency()
        .map(
            c -> {
              int without = order.unpriced().size();
              String sum =
                  without == 0 ? "sum" : "sum without " + without + " articles that have no price";
              return item(
                  "root",
                  name,
                  Value.UNSET,
                  Value.UNSET,
                  Value.UNSET,
                  List.of(new CostWriter(draft, c).sum(sum, order.total())));
            })
        .orElseGet(() -> item("root", name, Value.UNSET, Value.UNSET, Value.UNSET, List.of()));
  }

  /** What is ordered for a line, nested in it. */
  private void ordered(Value line, String ordinal, Order order, String item) {
    List<Value> nested = new ArrayList<>();
    for (Order.Row row : order.rows()) {
      if (row.item().equals(item) && row.units() > 0) {
        nested.add(ordered(row, ordinal + "-" + (nested.size() + 1), order.currency()));
      }
    }
    if (!nested.isEmpty()) {
      draft.relate("IfcRelNests", id("nests-items", ordinal), line, Value.list(nested));
    }
  }

  private Value ordered(Order.Row row, String ordinal, Optional<String> currency) {
    Value quantity = new Quantities(draft).count(row.unit(), row.units());
    List<Value> costs =
        currency.stream()
            .flatMap(
                c ->
                    row.price().stream()
                        .map(p -> new CostWriter(draft, c).unitPrice(row.unit(), p)))
            .toList();
    String length =
        row.stockLength().isPresent()
            ? " of " + rounded(row.stockLength().getAsDouble()) + " m"
            : "";
    String pack = row.perUnit() > 1 ? " of " + row.perUnit() : "";
    Value item =
        item(
            ordinal,
            Value.label(row.description()),
            Value.text(
                row.units()
                    + " "
                    + row.unit()
                    + pack
                    + length
                    + (costs.isEmpty() ? "; no price known" : "")),
            Value.label(row.item()),
            Value.list(quantity),
            costs);
    if (draft.ifc2x3()) {
      definitions.attachQuantities(
          item, "", "cost-item/" + ordinal, "Underlee_BillQuantity", List.of(quantity));
    }
    return item;
  }

  private static String kind(Order order) {
    if (!order.isPriced()) {
      return "UNPRICEDBILLOFQUANTITIES";
    }
    return order.unpriced().isEmpty() ? "PRICEDBILLOFQUANTITIES" : "ESTIMATE";
  }

  private Value schedule(Order order) {
    Value kind = Value.enumeration(kind(order));
    Value u = Value.UNSET;
    Value number = Value.label("underlee");
    List<Value> rest =
        draft.ifc2x3()
            ? List.of(u, u, u, u, u, u, u, number, kind)
            : List.of(u, number, kind, u, u, u);
    return draft.root(
        "IfcCostSchedule", id("cost-schedule", ""), Value.label(NAME), Value.UNSET, rest);
  }

  private Value line(BillLine line, String ordinal) {
    Value quantity = quantity(line);
    Value description = Value.text(words(line));
    Value item =
        item(
            ordinal,
            Value.label(line.description()),
            description,
            Value.label(line.item()),
            Value.list(quantity),
            List.of());
    if (draft.ifc2x3()) {
      definitions.attachQuantities(
          item, "", "cost-item/" + ordinal, "Underlee_BillQuantity", List.of(quantity));
    }
    List<Value> elements = line.partIds().stream().map(this::element).toList();
    if (!elements.isEmpty()) {
      draft.relate(
          "IfcRelAssignsToControl", id("counts", ordinal), Value.list(elements), Value.UNSET, item);
    }
    return item;
  }

  private Value item(
      String ordinal,
      Value name,
      Value description,
      Value number,
      Value quantities,
      List<Value> costs) {
    Value u = Value.UNSET;
    Value values = costs.isEmpty() ? u : Value.list(costs);
    List<Value> rest = draft.ifc2x3() ? List.of(number) : List.of(u, number, u, values, quantities);
    Value item = draft.root("IfcCostItem", id("cost-item", ordinal), name, description, rest);
    if (draft.ifc2x3() && !costs.isEmpty()) {
      draft.relate(
          "IfcRelAssociatesAppliedValue", id("costs", ordinal), Value.list(item), costs.get(0));
    }
    return item;
  }

  private Value quantity(BillLine line) {
    Quantities quantities = new Quantities(draft);
    return switch (line.kind()) {
      case COUNT -> quantities.count(line.unit(), whole(line));
      case LENGTH -> quantities.length(line.unit(), line.quantity());
      case AREA -> quantities.area(line.unit(), line.quantity());
    };
  }

  /** IFC4X3 counts in whole numbers; so does a shop. */
  private static long whole(BillLine line) {
    if (line.quantity() != Math.rint(line.quantity())) {
      throw new IllegalArgumentException(
          "the bill counts " + line.quantity() + " of " + line.item() + ": not a whole number");
    }
    return (long) line.quantity();
  }

  private static String words(BillLine line) {
    return switch (line.kind()) {
      case COUNT -> whole(line) + " " + line.unit();
      case LENGTH -> rounded(line.quantity()) + " m";
      case AREA -> rounded(line.quantity()) + " m²";
    };
  }

  private static String rounded(double quantity) {
    return BigDecimal.valueOf(quantity)
        .setScale(DECIMALS, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  private Value element(String partId) {
    PlacedPart part = parts.get(partId);
    if (part == null) {
      throw new IllegalArgumentException("the bill names a part that is not laid out: " + partId);
    }
    return part.element();
  }

  private String id(String role, String ordinal) {
    return draft.ids().of("", role, ordinal);
  }
}
