package org.underlee.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.underlee.check.DrainSet;
import org.underlee.run.Arrangement;
import org.underlee.run.Comparison;
import org.underlee.takeoff.Order;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Shares;

/** Writes arrangements side by side, one in a row. */
public final class CompareText {
  private CompareText() {}

  public static String write(Comparison comparison, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    out.append(
        row(
            "",
            "Kit",
            "Low end",
            "Fall",
            "Dry",
            "Headroom",
            "Outlets",
            "Cut",
            "To buy",
            "Seat; remarks"));
    List<Arrangement> all = comparison.arrangements();
    for (int i = 0; i < all.size(); i++) {
      out.append(row(i + 1, all.get(i), units));
    }
    if (all.isEmpty()) {
      out.append("No kit serves a bay of the decks in scope; run design to see why.\n");
    } else {
      out.append("\nTo lay one out: ").append(typed(all.get(0))).append('\n');
    }
    return out.toString();
  }

  private static String row(int number, Arrangement a, UnitSystem units) {
    return row(
        Integer.toString(number),
        a.kit().id(),
        a.lowEnd(),
        ratio(a),
        String.format(Locale.ROOT, "%.1f %%", Shares.percent(a.dryFraction(), 1)),
        a.headroom().isPresent() ? Lengths.format(a.headroom().getAsDouble(), units) : "-",
        a.drains().map(CompareText::outlets).orElse("-"),
        Integer.toString(a.partsCut()),
        Integer.toString(a.bought()),
        remarks(a, units));
  }

  /** How many, and how much of the hardest used one's capacity the rain takes. */
  private static String outlets(DrainSet drains) {
    return String.format(
        Locale.ROOT, "%d, %.0f %%", drains.own().outlets(), Math.ceil(100 * drains.use()));
  }

  private static String least(DrainSet drains, UnitSystem units) {
    return drains
        .least()
        .map(
            s ->
                "; least gutter "
                    + Lengths.format(s.width(), units)
                    + " x "
                    + Lengths.format(s.depth(), units)
                    + " with "
                    + s.outlets()
                    + " x "
                    + Lengths.format(s.downspout(), units))
        .orElse("; no common gutter carries it");
  }

  private static String ratio(Arrangement a) {
    return "1:" + Math.round(1 / a.fall());
  }

  private static String remarks(Arrangement a, UnitSystem units) {
    String seats =
        a.fields().stream()
            .map(f -> Lengths.format(f.seatHigh(), units))
            .distinct()
            .collect(Collectors.joining(" / "));
    String cost = a.cost().map(c -> "; " + cost(c)).orElse("");
    String boards = a.boardsOff() ? "; boards off" : "";
    String ways = a.bothWays().isEmpty() ? "" : "; falls both ways";
    String least = a.drains().map(d -> least(d, units)).orElse("");
    return seats
        + least
        + cost
        + boards
        + ways
        + a.dominatedBy().map(n -> "; no better than " + n).orElse("");
  }

  private static String cost(Order.Cost cost) {
    if (cost.amount().signum() == 0) {
      return "no price in the list for any of it";
    }
    String amount = cost.amount().toPlainString() + " " + cost.currency();
    return cost.unpriced() == 0 ? amount : amount + " and " + cost.unpriced() + " without a price";
  }

  /** The options of {@code design} that give it. */
  private static String typed(Arrangement a) {
    return "design FILE --kit "
        + a.kit().id()
        + " --fall "
        + ratio(a)
        + " --low-end "
        + a.lowEnd()
        + (a.boardsOff() ? " --boards-off" : "")
        + a.bothWays().stream().map(f -> " --both-ways " + f).collect(Collectors.joining());
  }

  private static String row(
      String number,
      String kit,
      String lowEnd,
      String fall,
      String dry,
      String headroom,
      String outlets,
      String cut,
      String bought,
      String seat) {
    return String.format(
                Locale.ROOT,
                "%3s  %-18s %-10s %-6s %6s  %-12s %-9s %4s  %6s  %s",
                number,
                kit,
                lowEnd,
                fall,
                dry,
                headroom,
                outlets,
                cut,
                bought,
                seat)
            .stripTrailing()
        + "\n";
  }
}
