package org.underlee.drainage;

import java.util.List;

/**
 * Where the rain on the decks in scope goes.
 *
 * @param area in scope, m²
 * @param added other area whose rain comes onto it, m²
 * @param drained part of both whose rain reaches the ground through an outlet, m²
 * @param ponds water that stands with every outlet open
 * @param blocked what happens when each outlet is blocked in turn
 * @param flat parts without fall to the gutter, and parts that fall away from it
 */
public record DrainProof(
    double area,
    double added,
    double drained,
    List<Leak> leaks,
    List<OutletShare> outlets,
    List<StandingWater> ponds,
    List<StandingWater> blocked,
    List<String> flat) {
  /** A downpour to express leaks by, mm/h; no design storm. */
  public static final double TEST_RAIN = 100;

  public DrainProof {
    // Areas of slivers add up in another order, to a last digit more than the whole.
    drained = Math.min(drained, area + added);
    leaks = List.copyOf(leaks);
    outlets = List.copyOf(outlets);
    ponds = List.copyOf(ponds);
    blocked = List.copyOf(blocked);
    flat = List.copyOf(flat);
  }

  /** The area whose rain was followed, m². */
  public double rain() {
    return area + added;
  }

  /** Part of the rain in scope that provably reaches an outlet; 0 when nothing is in scope. */
  public double dryFraction() {
    return area > 0 ? drained / rain() : 0;
  }
}
