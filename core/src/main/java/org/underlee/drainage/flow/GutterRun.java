package org.underlee.drainage.flow;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One straight gutter between two closed or open ends, in SI.
 *
 * @param fall drop over run toward its far end; negative when it falls toward its start
 * @param roughness Manning's n; 0 for no friction
 * @param outlets in order along the gutter, one or more
 */
public record GutterRun(
    double length,
    GutterSection section,
    double fall,
    double roughness,
    List<Inflow> inflows,
    List<Outlet> outlets) {
  /** Steeper than this, the depth is no more the depth across the flow. */
  private static final double STEEPEST = 0.1;

  /** Ends that are given in feet miss the length by rounding. */
  private static final double ROUNDING = 1e-9;

  public GutterRun {
    require(length > 0 && Double.isFinite(length), "its length is " + length + " m");
    require(Math.abs(fall) <= STEEPEST, "its fall is " + fall + ", steepest is " + STEEPEST);
    require(roughness >= 0 && Double.isFinite(roughness), "its roughness is " + roughness);
    require(!outlets.isEmpty(), "it has no outlet; a blocked gutter is a BlockedPool");
    double end = length * (1 + ROUNDING);
    double start = -length * ROUNDING;
    for (Inflow in : inflows) {
      require(in.from() >= start && in.to() <= end, in + " is outside of its " + length + " m");
    }
    outlets = outlets.stream().sorted(Comparator.comparingDouble(Outlet::at)).toList();
    for (Outlet out : outlets) {
      require(out.at() >= start && out.at() <= end, out + " is outside of its " + length + " m");
    }
    for (int i = 1; i < outlets.size(); i++) {
      require(
          outlets.get(i).at() > outlets.get(i - 1).at(),
          "two outlets are at " + outlets.get(i).at() + " m");
    }
    inflows = List.copyOf(inflows);
  }

  public double inflow() {
    return inflows.stream().mapToDouble(Inflow::flow).sum();
  }

  /**
   * The same gutter with one of its outlets blocked.
   *
   * @throws IllegalArgumentException when it was the only one: then the water is a {@link
   *     BlockedPool}
   */
  public GutterRun blocked(int outlet) {
    List<Outlet> open = new ArrayList<>(outlets);
    open.remove(outlet);
    return new GutterRun(length, section, fall, roughness, inflows, open);
  }

  /** The same gutter in another rain. */
  public GutterRun scaled(double factor) {
    List<Inflow> more =
        inflows.stream().map(i -> new Inflow(i.from(), i.to(), factor * i.flow())).toList();
    return new GutterRun(length, section, fall, roughness, more, outlets);
  }

  private static void require(boolean holds, String fault) {
    if (!holds) {
      throw new IllegalArgumentException("the gutter cannot be worked out: " + fault);
    }
  }
}
