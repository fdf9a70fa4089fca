package org.underlee.report;

import java.util.Locale;
import org.underlee.kit.Kit;
import org.underlee.takeoff.Order;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** Writes an order for people: in the shop's units, spares included, with prices where known. */
final class OrderText {
  private OrderText() {}

  static String write(Order order, Kit kit, UnitSystem units) {
    StringBuilder out = new StringBuilder("\nTo order, in the shop's units, with spares\n");
    for (Order.Row r : order.rows()) {
      out.append(row(r, order, kit, units));
    }
    order.cost().ifPresent(c -> out.append(sum(c)));
    if (!order.alternatives().isEmpty()) {
      out.append("\nThe same in one length alone, without spares\n");
      for (Order.Alternative a : order.alternatives()) {
        out.append(
            line(
                a.pieces() + " x " + Lengths.format(a.stockLength(), units),
                a.item(),
                a.cost().map(c -> money(c.toPlainString(), order)).orElse("no price"),
                ""));
      }
    }
    return out.toString();
  }

  private static String row(Order.Row r, Order order, Kit kit, UnitSystem units) {
    String pack = r.perUnit() > 1 ? " of " + r.perUnit() : "";
    String length =
        r.stockLength().isPresent()
            ? " " + Lengths.format(r.stockLength().getAsDouble(), units)
            : "";
    String price =
        order.isPriced()
            ? r.cost().map(c -> money(c.toPlainString(), order)).orElse("no price")
            : "";
    return line(
        r.units() + " " + r.unit() + pack + length,
        kit.item(r.item()).description(units),
        price,
        r.spare() == 0 ? "" : r.spare() + " spare");
  }

  private static String money(String amount, Order order) {
    return amount + order.currency().map(c -> " " + c).orElse("");
  }

  private static String sum(Order.Cost cost) {
    String without =
        cost.unpriced() == 0
            ? ""
            : "without " + cost.unpriced() + " that have no price, which are in no sum";
    return line("", "Sum", cost.amount().toPlainString() + " " + cost.currency(), without);
  }

  private static String line(String amount, String what, String price, String note) {
    return String.format(Locale.ROOT, "  %-22s %-62s %14s  %s", amount, what, price, note)
            .stripTrailing()
        + "\n";
  }
}
