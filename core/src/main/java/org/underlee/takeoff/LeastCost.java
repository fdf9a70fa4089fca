package org.underlee.takeoff;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What any plan of an order costs at least, by formulas alone. Each piece is charged a part of a
 * stick's cost such that no stick can be charged more than it costs: by its share of the stick's
 * length, or by a dual feasible function (Fekete and Schepers, "New classes of fast lower bounds
 * for bin packing problems", Mathematical Programming 91, 2001), which charges as much for a piece
 * that is a little longer than an equal part of the stick as for the part that it spoils.
 *
 * <p>Pieces that lie side by side divide the charge of their block, which is that of its longest:
 * each pays its part of the fullest block that it can be in. Of several sticks, a piece is charged
 * by the one that charges least.
 */
final class LeastCost {
  /** The most parts that a stick is divided into: more lie below what bounds are rounded up by. */
  private static final int MOST_PARTS = 24;

  private final CuttingOrder order;
  private final double[] pieces;

  private LeastCost(CuttingOrder order) {
    this.order = order;
    this.pieces =
        IntStream.range(0, order.sizes())
            .mapToDouble(s -> order.wanted().get(s) / (double) abreast(order, s))
            .toArray();
  }

  /** How much of a stick is charged for a block; never less for a longer one. */
  private interface Charge {
    double of(long need, long room);

    /** By length. */
    static double byLength(long need, long room) {
      return need / (double) room;
    }

    /** By how many of so many equal parts it is longer than. */
    static Charge byParts(int parts) {
      return (need, room) -> {
        long whole = Math.floorDiv(need * parts, room);
        boolean isJustSoLong = whole * room == need * parts;
        return isJustSoLong ? byLength(need, room) : whole / (parts - 1.0);
      };
    }
  }

  static double of(CuttingOrder order) {
    LeastCost least = new LeastCost(order);
    List<Charge> byLength = order.offers().stream().map(o -> (Charge) Charge::byLength).toList();
    List<Charge> greatest = order.offers().stream().map(least::greatest).toList();
    return Math.max(least.charged(byLength), least.charged(greatest));
  }

  private static int abreast(CuttingOrder order, int size) {
    return order.blocks().stream()
        .filter(b -> b.sizes().contains(size))
        .mapToInt(b -> b.sizes().size())
        .max()
        .orElse(1);
  }

  /** The charge that gets most from all pieces which a stick can hold. */
  private Charge greatest(CuttingOrder.Offer offer) {
    return Stream.concat(
            Stream.of((Charge) Charge::byLength),
            IntStream.rangeClosed(2, MOST_PARTS).mapToObj(Charge::byParts))
        .max(Comparator.comparingDouble(c -> fromAll(c, offer)))
        .orElseThrow();
  }

  private double fromAll(Charge charge, CuttingOrder.Offer offer) {
    return IntStream.range(0, pieces.length)
        .filter(s -> need(s) <= offer.room())
        .mapToDouble(s -> pieces[s] * charge.of(need(s), offer.room()))
        .sum();
  }

  /** What all pieces are charged, each by the stick that charges least for it. */
  private double charged(List<Charge> charges) {
    double sum = 0;
    for (int size = 0; size < pieces.length; size++) {
      sum += pieces[size] * leastCharge(need(size), charges);
    }
    return sum;
  }

  private double leastCharge(long need, List<Charge> charges) {
    List<CuttingOrder.Offer> offers = order.offers();
    return IntStream.range(0, offers.size())
        .filter(o -> need <= offers.get(o).room())
        .mapToDouble(o -> offers.get(o).cost() * charges.get(o).of(need, offers.get(o).room()))
        .min()
        .orElse(0);
  }

  private long need(int size) {
    return order.blocks().get(size).need();
  }
}
