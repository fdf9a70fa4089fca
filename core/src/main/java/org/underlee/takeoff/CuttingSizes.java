package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.underlee.takeoff.CuttingStock.Offer;
import org.underlee.takeoff.CuttingStock.Saw;
import org.underlee.takeoff.Stick.Piece;

/** Takes pieces and stock in metres to an order in whole numbers, and its plan back to pieces. */
final class CuttingSizes {
  private static final double MICROMETRE = 1e-6;

  /** Less than this is rounding, in micrometres. */
  private static final double ROUNDING = 1e-3;

  /**
   * Widths are few side by side, and more blocks than these would not be looked through in time.
   */
  private static final int MOST_BLOCKS = 400;

  /** What makes pieces one size, longest and then widest first. */
  private record Size(long length, long width) {
    static final Comparator<Size> LONGEST_FIRST =
        Comparator.comparingLong((Size s) -> -s.length).thenComparingLong(s -> -s.width);
  }

  private final List<List<Piece>> pieces;
  private final List<Offer> offers;
  private final Saw saw;
  private final CuttingOrder order;

  private CuttingSizes(List<List<Piece>> pieces, List<Offer> offers, Saw saw, double costUnit) {
    this.pieces = pieces;
    this.offers = offers;
    this.saw = saw;
    List<Integer> wanted = new ArrayList<>(pieces.stream().map(List::size).toList());
    List<CuttingOrder.Offer> sold = new ArrayList<>();
    for (Offer offer : offers) {
      int supply = -1;
      if (offer.isOnHand()) {
        supply = wanted.size();
        wanted.add(offer.available());
      }
      sold.add(new CuttingOrder.Offer(room(offer), Math.round(offer.price() / costUnit), supply));
    }
    this.order = new CuttingOrder(pieces.size(), wanted, blocks(), sold);
  }

  static CuttingSizes of(List<Piece> all, List<Offer> offers, Saw saw, double costUnit) {
    boolean ripped = saw.ripWidth() > 0;
    TreeMap<Size, List<Piece>> sizes = new TreeMap<>(Size.LONGEST_FIRST);
    all.stream()
        .sorted(Comparator.comparingDouble(Piece::length).thenComparingDouble(Piece::width))
        .forEach(p -> sizes.computeIfAbsent(size(p, ripped), k -> new ArrayList<>()).add(p));
    return new CuttingSizes(List.copyOf(sizes.values()), offers, saw, costUnit);
  }

  private static Size size(Piece piece, boolean ripped) {
    return new Size(micrometres(piece.length()), ripped ? micrometres(piece.width()) : 0);
  }

  CuttingOrder order() {
    return order;
  }

  /** Whether every way to rip was looked at, so that a bound holds for all of them. */
  boolean isComplete() {
    return order.blocks().size() < MOST_BLOCKS;
  }

  static Offer longestSold(List<Offer> offers) {
    return offers.stream()
        .filter(o -> !o.isOnHand())
        .max(Comparator.comparingDouble(Offer::length))
        .orElseThrow();
  }

  static void requireStockFor(List<Piece> pieces, List<Offer> offers) {
    double longest = longestSold(offers).length();
    for (Piece piece : pieces) {
      if (micrometres(piece.length()) > micrometres(longest)) {
        throw new IllegalArgumentException(
            "a piece of "
                + piece.length()
                + " m is longer than the longest stock, "
                + longest
                + " m");
      }
    }
  }

  private static long micrometres(double metres) {
    return Math.round(metres / MICROMETRE);
  }

  private static long up(double metres) {
    return (long) Math.ceil(metres / MICROMETRE - ROUNDING);
  }

  private static long down(double metres) {
    return (long) Math.floor(metres / MICROMETRE + ROUNDING);
  }

  private long room(Offer offer) {
    return down(offer.length() - 2 * saw.endTrim()) + up(saw.kerf());
  }

  /** Single pieces, longest first; then what fits side by side into the sheet. */
  private List<CuttingOrder.Block> blocks() {
    List<CuttingOrder.Block> blocks = new ArrayList<>();
    IntStream.range(0, pieces.size()).forEach(s -> blocks.add(block(List.of(s))));
    if (saw.ripWidth() > 0) {
      long room = down(saw.ripWidth()) + up(saw.kerf());
      IntStream.range(0, pieces.size()).forEach(s -> beside(List.of(s), room - across(s), blocks));
    }
    return blocks;
  }

  private void beside(List<Integer> begun, long room, List<CuttingOrder.Block> blocks) {
    for (int size = begun.get(begun.size() - 1); size < pieces.size(); size++) {
      int next = size;
      long same = begun.stream().filter(s -> s == next).count();
      if (across(size) <= room && same < pieces.get(size).size() && blocks.size() < MOST_BLOCKS) {
        List<Integer> more = new ArrayList<>(begun);
        more.add(size);
        blocks.add(block(more));
        beside(more, room - across(size), blocks);
      }
    }
  }

  /** A piece without a width is as wide as the sheet. */
  private long across(int size) {
    double width = pieces.get(size).get(0).width();
    return up(width > 0 ? width : saw.ripWidth()) + up(saw.kerf());
  }

  /** The first of the sizes is the longest. */
  private CuttingOrder.Block block(List<Integer> sizes) {
    List<Piece> longest = pieces.get(sizes.get(0));
    return new CuttingOrder.Block(
        up(longest.get(longest.size() - 1).length()) + up(saw.kerf()), sizes);
  }

  /** The pieces on their sticks; what a pattern has beyond what is wanted is left out. */
  List<Stick> sticks(List<Pattern> patterns) {
    int[] used = new int[pieces.size()];
    List<Stick> sticks = new ArrayList<>();
    for (Pattern pattern : patterns) {
      List<Stick.Block> blocks = new ArrayList<>();
      for (int block : pattern.blocks()) {
        List<Piece> own = new ArrayList<>();
        for (int size : order.blocks().get(block).sizes()) {
          if (used[size] < pieces.get(size).size()) {
            own.add(pieces.get(size).get(used[size]++));
          }
        }
        if (!own.isEmpty()) {
          own.sort(Comparator.comparingDouble(p -> -p.width()));
          blocks.add(new Stick.Block(own));
        }
      }
      blocks.sort(Comparator.comparingDouble(b -> -b.length()));
      sticks.add(stick(offers.get(pattern.offer()), blocks));
    }
    return sticks;
  }

  private Stick stick(Offer offer, List<Stick.Block> blocks) {
    double used = blocks.stream().mapToDouble(b -> b.length() + saw.kerf()).sum() - saw.kerf();
    double left = offer.length() - 2 * saw.endTrim() - used;
    return new Stick(
        offer.length(), blocks, left > saw.kerf() ? left - saw.kerf() : 0, offer.isOnHand());
  }
}
