package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.finding.StopSign;
import org.underlee.takeoff.Stick.Piece;

/**
 * Cuts pieces from bought lengths at least cost, and says what the least cost is proven to be.
 *
 * <p>Column generation gives a lower bound and {@link CuttingSearch} a plan; when they meet the
 * plan is optimal, which is the rule on real orders. Lengths are counted in whole micrometres,
 * pieces rounded up and stock down, so that a plan never needs more than is there.
 */
public final class CuttingStock {
  /** Costs are counted in tenths of a millimetre of length, or hundredths of a cent. */
  private static final double COST_UNIT = 1e-4;

  private CuttingStock() {}

  /**
   * A length that is sold, or is on hand.
   *
   * @param length metres
   * @param price of one, in any one measure: its length itself where no price is known; zero for
   *     what is on hand
   * @param available how many there are; zero where as many can be bought as are needed
   */
  public record Offer(double length, double price, int available) {
    /** One that is sold. */
    public Offer(double length, double price) {
      this(length, price, 0);
    }

    boolean isOnHand() {
      return available > 0;
    }
  }

  /**
   * How it is cut.
   *
   * @param kerf lost at each cut, across or along, metres; a cut that falls on the stick's end is
   *     free
   * @param endTrim cut off each end first, metres; a piece that needs the trimmed ends too takes a
   *     whole stick as it is
   * @param ripWidth of the sheet, where pieces may be ripped from side by side, metres; else zero
   */
  public record Saw(double kerf, double endTrim, double ripWidth) {}

  /**
   * What to buy and cut.
   *
   * @param sticks what to buy and cut, the longest first
   * @param cost of all sticks, in the measure of the offers' prices
   * @param bound what any plan is proven to cost at least; zero where nothing is proven
   */
  public record Plan(List<Stick> sticks, double cost, double bound) {
    public Plan {
      sticks = List.copyOf(sticks);
    }

    public boolean isProvenOptimal() {
      return cost <= bound;
    }
  }

  /** As {@link #cheapest}, for the least length bought. */
  public static Plan plan(List<Double> lengths, List<Double> stock, double kerf) {
    return cheapest(
        lengths.stream().map(l -> new Piece(l, 0)).toList(),
        stock.stream().map(s -> new Offer(s, s)).toList(),
        new Saw(kerf, 0, 0));
  }

  /**
   * Cuts the pieces at least cost. Sheets are cut across first, then each block is ripped.
   *
   * @param offers lengths sold, any order, at least one; and what is on hand
   * @throws IllegalArgumentException when a piece is longer than every length sold
   */
  public static Plan cheapest(List<Piece> pieces, List<Offer> offers, Saw saw) {
    return cheapest(pieces, offers, saw, StopSign.here());
  }

  /** The same, no further once it is not wanted. */
  static Plan cheapest(List<Piece> pieces, List<Offer> offers, Saw saw, StopSign stop) {
    List<Offer> sorted =
        offers.stream()
            .sorted(Comparator.comparingDouble(Offer::length).thenComparingInt(Offer::available))
            .toList();
    CuttingSizes.requireStockFor(pieces, sorted);
    List<Piece> rest = new ArrayList<>();
    List<Stick> whole = new ArrayList<>();
    double usable = CuttingSizes.longestSold(sorted).length() - 2 * saw.endTrim();
    for (Piece piece : pieces) {
      if (saw.endTrim() > 0 && piece.length() > usable) {
        Stick.Block block = new Stick.Block(List.of(piece));
        whole.add(new Stick(CuttingSizes.longestSold(sorted).length(), List.of(block), 0, false));
      } else {
        rest.add(piece);
      }
    }
    double wholeCost = whole.size() * CuttingSizes.longestSold(sorted).price();
    if (rest.isEmpty()) {
      return new Plan(whole, wholeCost, wholeCost);
    }
    CuttingSizes sizes = CuttingSizes.of(rest, sorted, saw, COST_UNIT);
    CuttingSearch.Found found = new CuttingSearch(sizes.order(), stop).search();
    List<Stick> sticks = new ArrayList<>(sizes.sticks(found.sticks()));
    sticks.addAll(whole);
    double bound = sizes.isComplete() ? found.bound() * COST_UNIT + wholeCost : 0;
    return new Plan(sorted(sticks), found.cost() * COST_UNIT + wholeCost, bound);
  }

  /** The longest first, and of equal ones by what is cut from them. */
  private static List<Stick> sorted(List<Stick> sticks) {
    Map<List<Stick.Block>, String> texts = new HashMap<>();
    sticks.forEach(s -> texts.computeIfAbsent(s.blocks(), List::toString));
    return sticks.stream()
        .sorted(
            Comparator.comparingDouble((Stick s) -> -s.stockLength())
                .thenComparing(s -> texts.getOrDefault(s.blocks(), ""), Comparator.reverseOrder()))
        .toList();
  }
}
