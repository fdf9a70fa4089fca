package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.underlee.takeoff.Patterns.Pattern;

/**
 * Cuts pieces from bought lengths at least cost, and says what the least cost is proven to be.
 *
 * <p>Column generation gives a lower bound and {@link CuttingSearch} a plan; when they meet the
 * plan is optimal, which is the rule on real orders. Lengths are counted in whole micrometres,
 * pieces rounded up and stock down, so that a plan never needs more than is there.
 */
public final class CuttingStock {
  private static final double MICROMETRE = 1e-6;

  /** Costs are counted in tenths of a millimetre of length, or hundredths of a cent. */
  private static final double COST_UNIT = 1e-4;

  /** Less than this is rounding, in the units above. */
  private static final double ROUNDING = 1e-3;

  private CuttingStock() {}

  /**
   * A length that is sold.
   *
   * @param length metres
   * @param price of one, in any one measure: its length itself where no price is known
   */
  public record Offer(double length, double price) {}

  /**
   * What to buy and cut.
   *
   * @param sticks what to buy and cut, the longest first
   * @param cost of all sticks, in the measure of the offers' prices
   * @param bound what any plan is proven to cost at least
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
    return cheapest(lengths, stock.stream().map(s -> new Offer(s, s)).toList(), kerf);
  }

  /**
   * Cuts the pieces at least cost.
   *
   * @param lengths pieces wanted, metres
   * @param offers lengths sold, any order, at least one
   * @param kerf lost at each cut, metres; a cut that falls on the stick's end is free
   * @throws IllegalArgumentException when a piece is longer than every length sold
   */
  public static Plan cheapest(List<Double> lengths, List<Offer> offers, double kerf) {
    double longest = offers.stream().mapToDouble(Offer::length).max().orElseThrow();
    for (double length : lengths) {
      if (micrometres(length) > micrometres(longest)) {
        throw new IllegalArgumentException(
            "a piece of " + length + " m is longer than the longest stock, " + longest + " m");
      }
    }
    if (lengths.isEmpty()) {
      return new Plan(List.of(), 0, 0);
    }
    List<Offer> sorted = offers.stream().sorted(Comparator.comparingDouble(Offer::length)).toList();
    return new Sizes(lengths, sorted, kerf).cut();
  }

  private static long micrometres(double metres) {
    return Math.round(metres / MICROMETRE);
  }

  /** The pieces by size, longest first, and the offers, shortest first. */
  private record Sizes(List<List<Double>> pieces, List<Offer> offers, double kerf) {
    Sizes(Collection<Double> lengths, List<Offer> offers, double kerf) {
      this(bySize(lengths), offers, kerf);
    }

    private static List<List<Double>> bySize(Collection<Double> lengths) {
      TreeMap<Long, List<Double>> sizes = new TreeMap<>(Comparator.reverseOrder());
      lengths.stream()
          .sorted()
          .forEach(l -> sizes.computeIfAbsent(micrometres(l), k -> new ArrayList<>()).add(l));
      return List.copyOf(sizes.values());
    }

    Plan cut() {
      CuttingSearch.Found found = new CuttingSearch(order()).search();
      List<Stick> sticks = new ArrayList<>();
      int[] used = new int[pieces.size()];
      for (Pattern pattern : found.sticks()) {
        List<Double> cuts = new ArrayList<>();
        for (int size = 0; size < used.length; size++) {
          for (int n = 0; n < pattern.count(size); n++) {
            cuts.add(pieces.get(size).get(used[size]++));
          }
        }
        sticks.add(stick(offers.get(pattern.offer()).length(), cuts));
      }
      sticks.sort(
          Comparator.comparingDouble((Stick s) -> -s.stockLength())
              .thenComparing(s -> s.cuts().toString(), Comparator.reverseOrder()));
      return new Plan(sticks, found.cost() * COST_UNIT, found.bound() * COST_UNIT);
    }

    private CuttingOrder order() {
      long cut = (long) Math.ceil(kerf / MICROMETRE - ROUNDING);
      return new CuttingOrder(
          pieces.stream()
              .mapToLong(p -> (long) Math.ceil(p.get(p.size() - 1) / MICROMETRE - ROUNDING) + cut)
              .toArray(),
          pieces.stream().mapToInt(List::size).toArray(),
          offers.stream()
              .mapToLong(o -> (long) Math.floor(o.length() / MICROMETRE + ROUNDING) + cut)
              .toArray(),
          offers.stream().mapToLong(o -> Math.round(o.price() / COST_UNIT)).toArray());
    }

    private Stick stick(double length, List<Double> cuts) {
      double used = cuts.stream().mapToDouble(c -> c + kerf).sum() - kerf;
      double left = length - used;
      return new Stick(length, cuts, left > kerf ? left - kerf : 0);
    }
  }
}
