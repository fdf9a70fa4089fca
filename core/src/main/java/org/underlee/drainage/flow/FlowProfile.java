package org.underlee.drainage.flow;

import java.util.Comparator;
import java.util.List;

/**
 * The water in a gutter, from its start to its end, in SI.
 *
 * @param stations in order; two at the same place where the water meets an outlet from both sides
 * @param outflows one for each outlet, in order
 */
public record FlowProfile(List<Station> stations, List<Outflow> outflows) {
  /**
   * The water at one place.
   *
   * @param flow past this place, toward the far end; negative toward the start
   */
  public record Station(double at, double depth, double flow) {}

  /**
   * What one outlet takes.
   *
   * @param fromStart what comes from the side of the gutter's start
   * @param fromEnd what comes from the side of its far end
   * @param head depth that drives the outlet
   */
  public record Outflow(Outlet outlet, double fromStart, double fromEnd, double head) {
    public double total() {
      return fromStart + fromEnd;
    }
  }

  public FlowProfile {
    stations = List.copyOf(stations);
    outflows = List.copyOf(outflows);
  }

  /** Where the water is deepest; the first of equals. */
  public Station deepest() {
    return stations.stream()
        .max(Comparator.comparingDouble(Station::depth))
        .orElseThrow(() -> new IllegalStateException("a profile without stations"));
  }

  /** The greatest flow that any place of the gutter carries. */
  public double greatestFlow() {
    return stations.stream().mapToDouble(s -> Math.abs(s.flow())).max().orElse(0);
  }

  /** The greatest flow of any outlet. */
  public double greatestOutflow() {
    return outflows.stream().mapToDouble(Outflow::total).max().orElse(0);
  }
}
