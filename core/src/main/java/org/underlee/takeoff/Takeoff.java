package org.underlee.takeoff;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.underlee.layout.PartKind;

/**
 * What to buy and cut for a layout.
 *
 * @param lines one a stock item: what is in the assembly
 * @param cuts the cut list, longest first in each item
 * @param stock what to take by the length, with its cutting pattern
 * @param bought for each item sold by length, how much is bought and what is proven of it
 * @param lengths for each item sold by length, where its length goes
 * @param order what to ask a shop for
 */
public record Takeoff(
    List<Line> lines,
    List<Cut> cuts,
    List<Stock> stock,
    Map<String, Bought> bought,
    Map<String, Lengths> lengths,
    Order order) {
  /**
   * What is in the assembly of one item.
   *
   * @param unit {@code m} for what is sold by length, else {@code piece}
   * @param quantity pieces, or metres cut: gross, with laps and folded ends, without waste
   * @param parts ids of the parts counted, each part in one line
   */
  public record Line(
      String item, String description, String unit, double quantity, List<String> parts) {}

  /**
   * Equal pieces to cut.
   *
   * @param kind what they are
   * @param length metres, to a tenth of a millimetre
   * @param sheetWidth of the flat sheet, for pieces that are folded
   * @param bays where they go: bays, joist lines or fields
   */
  public record Cut(
      String item,
      PartKind kind,
      double length,
      OptionalDouble sheetWidth,
      int count,
      List<String> bays) {}

  /**
   * What to take of one item, cut to one pattern.
   *
   * @param pieces how many sticks are cut to this pattern
   * @param blocks what each cross-cut gives
   * @param offcut left of each, metres
   * @param onHand whether it need not be bought
   */
  public record Stock(
      String item,
      double stockLength,
      int pieces,
      List<Stick.Block> blocks,
      double offcut,
      boolean onHand) {
    /** The lengths of the cross-cuts. */
    public List<Double> pattern() {
      return blocks.stream().map(Stick.Block::length).toList();
    }

    /** Whether a cross-cut gives several pieces. */
    public boolean isRipped() {
      return blocks.stream().anyMatch(b -> b.pieces().size() > 1);
    }
  }

  /** What is bought as little of as can be. */
  public enum Measure {
    /** Metres, where not every length has a price. */
    LENGTH,
    /** In the price list's currency. */
    PRICE
  }

  /**
   * How much is bought of one item, by its cutting plan.
   *
   * @param length metres
   * @param measure what was made least
   * @param amount of it that the plan takes
   * @param least of it that any way of cutting is proven to need; zero where nothing is proven
   */
  public record Bought(double length, Measure measure, double amount, double least) {
    public boolean isProvenLeast() {
      return amount <= least;
    }
  }

  /**
   * Where the length of one item goes, metres. Net is the run that is covered; what is cut (gross)
   * is that with what is folded at the ends and what lies double; the rest of what is taken is kept
   * or wasted.
   *
   * @param net run covered
   * @param folds bent up or down at ends
   * @param laps lying over the next piece
   * @param bought in stock lengths, spares not included
   * @param onHand taken from what is on hand
   * @param kept offcuts that are long enough to keep
   * @param beside cut from the width of another piece, which takes no length of its own
   */
  public record Lengths(
      double net,
      double folds,
      double laps,
      double bought,
      double onHand,
      double kept,
      double beside) {
    /** What is cut. */
    public double gross() {
      return net + folds + laps;
    }

    /** Kerfs, trimmed ends and short offcuts, by the length of the stock. */
    public double waste() {
      return bought + onHand + beside - gross() - kept;
    }
  }

  /** Share that is left over of the lengths that are taken of an item, as the cutting plan says. */
  public double leftOver(String item) {
    List<Stock> own = stock.stream().filter(s -> s.item().equals(item)).toList();
    double taken = own.stream().mapToDouble(s -> s.stockLength() * s.pieces()).sum();
    double left = own.stream().mapToDouble(s -> s.offcut() * s.pieces()).sum();
    return taken == 0 ? 0 : left / taken;
  }

  /** Metres bought of an item. */
  public double bought(String item) {
    return stock.stream()
        .filter(s -> s.item().equals(item) && !s.onHand())
        .mapToDouble(s -> s.stockLength() * s.pieces())
        .sum();
  }
}
