package org.underlee.writeback;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The bill of quantities: an unpriced cost schedule with one root item, an item for each line with
 * its quantity, and the elements that the line is for.
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
  Optional<Value> write(List<BillLine> lines) {
    if (lines.isEmpty()) {
      return Optional.empty();
    }
    Value schedule = schedule();
    Value root = item("root", Value.label(NAME), Value.UNSET, Value.UNSET, Value.UNSET);
    // IFC2X3 has a relationship of its own for this.
    draft.relate(
        draft.ifc2x3() ? "IfcRelSchedulesCostItems" : "IfcRelAssignsToControl",
        id("schedules", "root"),
        Value.list(root),
        Value.UNSET,
        schedule);
    List<Value> items = new ArrayList<>();
    for (BillLine line : lines) {
      items.add(line(line, "line-" + (items.size() + 1)));
    }
    draft.relate("IfcRelNests", id("nests-items", "root"), root, Value.list(items));
    return Optional.of(schedule);
  }

  private Value schedule() {
    Value kind = Value.enumeration("UNPRICEDBILLOFQUANTITIES");
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
            Value.list(quantity));
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
      String ordinal, Value name, Value description, Value number, Value quantities) {
    Value u = Value.UNSET;
    List<Value> rest = draft.ifc2x3() ? List.of(number) : List.of(u, number, u, u, quantities);
    return draft.root("IfcCostItem", id("cost-item", ordinal), name, description, rest);
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
      case LENGTH -> rounded(line) + " m";
      case AREA -> rounded(line) + " m²";
    };
  }

  private static String rounded(BillLine line) {
    return BigDecimal.valueOf(line.quantity())
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
