package org.underlee.takeoff;

import java.util.List;

/**
 * One stock length and the pieces cut from it, longest first, metres.
 *
 * @param offcut what is left, after the cuts
 */
public record Stick(double stockLength, List<Double> cuts, double offcut) {
  public Stick {
    cuts = List.copyOf(cuts);
  }
}
