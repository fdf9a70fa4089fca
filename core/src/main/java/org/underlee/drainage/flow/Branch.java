package org.underlee.drainage.flow;

/**
 * Steady flow that grows along one arm of a gutter, from a still end to an outlet.
 *
 * <p>Method: spatially varied flow with water that enters square to the axis, Chow 1959 ch. 12
 * (from memory), as a balance of force: {@code dM/ds = A (S0 - Sf)}. It is the same equation as the
 * one for dy/ds, without its division by zero at critical depth, and the force goes on smoothly
 * where inflow begins and ends. Runge-Kutta of fourth order: upstream from the outlet as slow flow,
 * never below the least force; where it would be, the flow is fast, and is marched downstream from
 * its control section until the slow flow's force is greater (a jump).
 *
 * <p>Limits: small falls, hydrostatic pressure, no air, no waves; brackets and laps only as
 * roughness.
 */
final class Branch {
  /** A step is no longer than that in which fall and friction use up this share of the depth. */
  private static final double SHARE_OF_DEPTH = 0.2;

  private static final int MOST_PARTS = 64;

  private final Momentum momentum;
  private final double slope;
  private final double[] s;
  private final double[] flow;
  private final double[] critical;
  private final double[] force;
  private final boolean[] least;
  private final double[] depth;

  /** A quantity that is taken as straight along a step. */
  private record Straight(double from, double value, double growth) {
    double at(double s) {
      return Math.max(0, value + growth * (s - from));
    }
  }

  private Branch(Momentum momentum, double slope, double[] s, double[] flow) {
    this.momentum = momentum;
    this.slope = slope;
    this.s = s;
    this.flow = flow;
    this.critical = new double[s.length];
    this.force = new double[s.length];
    this.least = new boolean[s.length];
    this.depth = new double[s.length];
  }

  /**
   * Depths at the places given.
   *
   * @param slope of the bed, toward the outlet
   * @param s places, from the still end to the outlet
   * @param flow at each; straight in between
   * @param head least depth at the outlet
   */
  static double[] depths(Momentum momentum, double slope, double[] s, double[] flow, double head) {
    Branch branch = new Branch(momentum, slope, s, flow);
    branch.marchUpstream(head);
    branch.marchDownstream();
    return branch.depth;
  }

  private void marchUpstream(double head) {
    int last = s.length - 1;
    critical[last] = momentum.criticalDepth(flow[last]);
    depth[last] = Math.max(head, critical[last]);
    force[last] = momentum.force(flow[last], depth[last]);
    for (int k = last; k > 0; k--) {
      critical[k - 1] = momentum.criticalDepth(flow[k - 1], critical[k]);
      double there = step(k, k - 1, force[k], depth[k], true);
      double lowest = flow[k - 1] == 0 ? 0 : momentum.force(flow[k - 1], critical[k - 1]);
      least[k - 1] = there <= lowest;
      force[k - 1] = Math.max(there, lowest);
      depth[k - 1] =
          least[k - 1]
              ? critical[k - 1]
              : momentum.slowDepth(flow[k - 1], force[k - 1], critical[k - 1], depth[k]);
    }
  }

  private void marchDownstream() {
    double fast = 0;
    boolean running = false;
    for (int k = 1; k < s.length; k++) {
      if (!running && least[k - 1]) {
        running = true;
        fast = force[k - 1];
      }
      if (running) {
        fast = step(k - 1, k, fast, depth[k - 1], false);
        fast = Math.max(fast, flow[k] == 0 ? 0 : momentum.force(flow[k], critical[k]));
        running = fast > force[k] || least[k];
        if (running) {
          depth[k] = momentum.fastDepth(flow[k], fast, critical[k]);
        }
      }
    }
  }

  /** The force at place {@code to}, from the one at its neighbour {@code from}. */
  private double step(int from, int to, double start, double startDepth, boolean slow) {
    double whole = s[to] - s[from];
    Straight law = straight(flow, from, to);
    Straight bound = straight(critical, from, to);
    double drive = Math.abs(slope) + momentum.friction(flow[from], startDepth);
    double wanted = Math.abs(whole) * drive / (SHARE_OF_DEPTH * Math.max(startDepth, 1e-6));
    int parts = (int) Math.min(MOST_PARTS, Math.max(1, Math.ceil(wanted)));
    double h = whole / parts;
    double m = start;
    double y = startDepth;
    for (int i = 0; i < parts; i++) {
      double at = s[from] + i * h;
      double k1 = rate(law, bound, at, m, y, slow);
      double k2 = rate(law, bound, at + h / 2, m + h / 2 * k1, y, slow);
      double k3 = rate(law, bound, at + h / 2, m + h / 2 * k2, y, slow);
      double k4 = rate(law, bound, at + h, m + h * k3, y, slow);
      m += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
    }
    return m;
  }

  private Straight straight(double[] values, int from, int to) {
    return new Straight(s[from], values[from], (values[to] - values[from]) / (s[to] - s[from]));
  }

  private double rate(
      Straight law, Straight bound, double at, double m, double guess, boolean slow) {
    double q = law.at(at);
    double least = bound.at(at);
    double y = slow ? momentum.slowDepth(q, m, least, guess) : momentum.fastDepth(q, m, least);
    return y <= 0 ? 0 : momentum.section().area(y) * (slope - momentum.friction(q, y));
  }
}
