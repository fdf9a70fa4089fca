package org.underlee.drainage.flow;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

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
    require(length > 0 && Double.isFinite(length), "its length is %s m", length);
    require(Math.abs(fall) <= STEEPEST, "its fall is %s, steepest is %s", fall, STEEPEST);
    require(roughness >= 0 && Double.isFinite(roughness), "its roughness is %s", roughness);
    require(!outlets.isEmpty(), "it has no outlet; a blocked gutter is a BlockedPool");
    double end = length * (1 + ROUNDING);
    double start = -length * ROUNDING;
    for (Inflow in : inflows) {
      require(in.from() >= start && in.to() <= end, "%s is outside of its %s m", in, length);
    }
    outlets = outlets.stream().sorted(Comparator.comparingDouble(Outlet::at)).toList();
    for (Outlet out : outlets) {
      require(out.at() >= start && out.at() <= end, "%s is outside of its %s m", out, length);
    }
    for (int i = 1; i < outlets.size(); i++) {
      double at = outlets.get(i).at();
      require(at > outlets.get(i - 1).at(), "two outlets are at %s m", at);
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

  /** The words are put together only for a fault: a run is made for every rain that is tried. */
  private static void require(boolean holds, String fault, Object... values) {
    if (!holds) {
      throw new IllegalArgumentException(
          "the gutter cannot be worked out: " + String.format(Locale.ROOT, fault, values));
    }
  }
}
