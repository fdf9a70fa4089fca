package org.underlee.drainage.flow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Works out the steady flow in a gutter with one outlet or more. Each outlet is reached from one or
 * both sides; between two outlets the water parts where its surface has the same height from both.
 * The depth at an outlet is critical depth or the head that drives the outlet, whichever is
 * greater.
 *
 * <p>Limit: an outlet takes all water that reaches it, so that it is shown deeper, never shallower,
 * than one that lets water run past to the next.
 */
public final class GutterFlow {
  /** Places along an arm; ten times as many change depths by less than 1 part in 1000. */
  private static final int PLACES = 160;

  private static final int MOST_SWEEPS = 60;

  /**
   * Metres between the surfaces from both sides that count as one: the steps' own noise is less.
   */
  private static final double LEVEL = 2e-5;

  /** After so many sweeps two partings may be swinging against each other: half steps stop it. */
  private static final int FREE_SWEEPS = 8;

  /** Where the waters part is found on a coarser row of places than the depths. */
  private static final int COARSER = 4;

  /** Where waters part, as a share of the gutter's length. */
  private static final double CLOSE = 1e-7;

  private final GutterRun run;
  private final InflowLine inflow;
  private final Momentum momentum;
  private final int places;

  private GutterFlow(GutterRun run, int places) {
    this.run = run;
    this.inflow = new InflowLine(run.length(), run.inflows());
    this.momentum = new Momentum(run.section(), run.roughness());
    this.places = places;
  }

  /**
   * The steady water of a gutter.
   *
   * @throws IllegalStateException when the water between outlets finds no steady parting
   */
  public static FlowProfile solve(GutterRun run) {
    return solve(run, PLACES);
  }

  static FlowProfile solve(GutterRun run, int places) {
    double[] partings = new GutterFlow(run, Math.max(1, places / COARSER)).partings();
    return new GutterFlow(run, places).profile(partings);
  }

  /** One arm: where it is still, where its outlet is, and what reaches it. */
  private static final class Arm {
    private final double[] at;
    private final double[] flow;
    private final double[] depth;

    Arm(double[] at, double[] flow, double[] depth) {
      this.at = at;
      this.flow = flow;
      this.depth = depth;
    }

    boolean isLong() {
      return at.length > 1;
    }
  }

  private double[] partings() {
    int n = run.outlets().size();
    double[] parting = new double[n + 1];
    parting[n] = run.length();
    for (int i = 1; i < n; i++) {
      parting[i] = (run.outlets().get(i - 1).at() + run.outlets().get(i).at()) / 2;
    }
    for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      double moved = 0;
      for (int i = 1; i < n; i++) {
        double before = parting[i];
        double share = sweep < FREE_SWEEPS ? 1 : 0.5;
        parting[i] = before + share * (part(parting, i) - before);
        moved = Math.max(moved, Math.abs(parting[i] - before));
      }
      if (n <= 2 || moved <= 10 * CLOSE * run.length()) {
        return parting;
      }
    }
    throw new IllegalStateException(
        "the water between the outlets of a gutter of "
            + run.length()
            + " m finds no steady parting; work out each outlet's stretch alone");
  }

  /** Where the water parts between outlets i-1 and i: bracketed false position (Illinois). */
  private double part(double[] parting, int i) {
    if (Math.abs(difference(parting, i, parting[i])) <= LEVEL) {
      return parting[i];
    }
    double low = run.outlets().get(i - 1).at();
    double high = run.outlets().get(i).at();
    double atLow = difference(parting, i, low);
    double atHigh = difference(parting, i, high);
    if (atLow >= 0) {
      return low;
    }
    if (atHigh <= 0) {
      return high;
    }
    int side = 0;
    double x = low;
    for (int k = 0; k < 60 && high - low > CLOSE * run.length(); k++) {
      double next = (low * atHigh - high * atLow) / (atHigh - atLow);
      if (k % 4 == 3) {
        next = (low + high) / 2;
      }
      double f = difference(parting, i, next);
      boolean still = Math.abs(next - x) < CLOSE * run.length();
      x = next;
      if (Math.abs(f) <= LEVEL || still) {
        return x;
      }
      if (f > 0) {
        high = x;
        atHigh = f;
        atLow = side > 0 ? atLow / 2 : atLow;
        side = 1;
      } else {
        low = x;
        atLow = f;
        atHigh = side < 0 ? atHigh / 2 : atHigh;
        side = -1;
      }
    }
    return x;
  }

  /** How much higher the water stands at x when it comes from the outlet before than after. */
  private double difference(double[] parting, int i, double x) {
    double[] tried = parting.clone();
    tried[i] = x;
    Arm before = arm(i - 1, x, head(i - 1, tried));
    Arm after = arm(i, x, head(i, tried));
    return before.depth[0] - after.depth[0];
  }

  private double total(int outlet, double[] parting) {
    return inflow.upTo(parting[outlet + 1]) - inflow.upTo(parting[outlet]);
  }

  private double head(int outlet, double[] parting) {
    return run.outlets().get(outlet).head(total(outlet, parting));
  }

  /** The arm from a still place to an outlet, still place first. */
  private Arm arm(int outlet, double still, double head) {
    double end = run.outlets().get(outlet).at();
    double way = end - still;
    double length = Math.abs(way);
    if (length <= CLOSE * run.length()) {
      return new Arm(new double[] {end}, new double[] {0}, new double[] {head});
    }
    double sign = Math.signum(way);
    double[] s = places(still, sign, length);
    double[] at = new double[s.length];
    double[] flow = new double[s.length];
    double start = inflow.upTo(still);
    for (int k = 0; k < s.length; k++) {
      at[k] = k < s.length - 1 ? still + sign * s[k] : end;
      flow[k] = sign * (inflow.upTo(at[k]) - start);
    }
    double[] depth = Branch.depths(momentum, sign * run.fall(), s, flow, head);
    for (int k = 0; k < s.length; k++) {
      flow[k] *= sign;
    }
    return new Arm(at, flow, depth);
  }

  /** Corners of the inflow, and places between that crowd toward the outlet. */
  private double[] places(double still, double sign, double length) {
    double[] corners = inflow.corners();
    double[] all = new double[places + 1 + corners.length];
    int count = 0;
    for (int k = 0; k <= places; k++) {
      double left = 1 - (double) k / places;
      all[count++] = length * (1 - left * left);
    }
    for (double corner : corners) {
      double way = sign * (corner - still);
      if (way >= 0 && way <= length) {
        all[count++] = way;
      }
    }
    Arrays.sort(all, 0, count);
    int kept = 0;
    for (int k = 0; k < count; k++) {
      if (kept == 0 || all[k] - all[kept - 1] > 1e-7 * length) {
        all[kept++] = all[k];
      }
    }
    all[kept - 1] = length;
    return Arrays.copyOf(all, kept);
  }

  private FlowProfile profile(double[] parting) {
    List<FlowProfile.Station> stations = new ArrayList<>();
    List<FlowProfile.Outflow> outflows = new ArrayList<>();
    for (int i = 0; i < run.outlets().size(); i++) {
      Outlet outlet = run.outlets().get(i);
      double head = head(i, parting);
      Arm before = arm(i, parting[i], head);
      Arm after = arm(i, parting[i + 1], head);
      for (int k = 0; before.isLong() && k < before.at.length; k++) {
        stations.add(station(before, k));
      }
      for (int k = after.at.length - 1; after.isLong() && k >= 0; k--) {
        stations.add(station(after, k));
      }
      double here = inflow.upTo(outlet.at());
      outflows.add(
          new FlowProfile.Outflow(
              outlet, here - inflow.upTo(parting[i]), inflow.upTo(parting[i + 1]) - here, head));
    }
    return new FlowProfile(stations, outflows);
  }

  private static FlowProfile.Station station(Arm arm, int k) {
    return new FlowProfile.Station(arm.at[k], arm.depth[k], arm.flow[k]);
  }
}
