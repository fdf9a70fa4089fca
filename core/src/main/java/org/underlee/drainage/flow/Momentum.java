package org.underlee.drainage.flow;

import static org.underlee.drainage.flow.Outlets.GRAVITY;

/**
 * Specific force of a flow in a section, {@code Q²/(gA) + first moment}, and the depths that have
 * it. Each force above the least has two depths: one above critical (slow) and one below (fast).
 *
 * @param roughness Manning's n in SI
 */
record Momentum(GutterSection section, double roughness) {
  private static final int MOST_STEPS = 100;
  private static final double CLOSE = 1e-11;

  double force(double flow, double depth) {
    return force(flow, depth, section.area(depth));
  }

  private double force(double flow, double depth, double area) {
    double kinetic = flow == 0 ? 0 : flow * flow / (GRAVITY * area);
    return kinetic + section.firstMoment(depth);
  }

  /** Where Q²T = gA³; 0 when nothing flows. Newton on the logarithm, from a guess, bracketed. */
  double criticalDepth(double flow, double guess) {
    if (flow == 0) {
      return 0;
    }
    double low = 0;
    double high = Double.POSITIVE_INFINITY;
    double y = guess > 0 ? guess : section.depth() / 2;
    for (int i = 0; i < MOST_STEPS; i++) {
      double area = section.area(y);
      double width = section.topWidth(y);
      double over = Math.log(GRAVITY * area * area * area / (flow * flow * width));
      if (over > 0) {
        high = y;
      } else {
        low = y;
      }
      double next = y - over * area / (3 * width);
      if (!(next > low && next < high)) {
        next = Double.isInfinite(high) ? 2 * y : (low + high) / 2;
      }
      if (Math.abs(next - y) <= CLOSE * y) {
        return next;
      }
      y = next;
    }
    return y;
  }

  double criticalDepth(double flow) {
    return criticalDepth(flow, 0);
  }

  /** The slow depth, from a guess; critical where the force is the least or less. */
  double slowDepth(double flow, double force, double critical, double guess) {
    if (flow > 0 && force <= force(flow, critical)) {
      return critical;
    }
    double y = Math.max(guess, critical * 1.01 + 1e-9);
    for (int i = 0; i < MOST_STEPS; i++) {
      double area = section.area(y);
      double slope = slope(flow, y, area);
      if (slope <= 0) {
        y = 1.5 * y;
        continue;
      }
      double next = Math.max(critical, y - (force(flow, y, area) - force) / slope);
      if (Math.abs(next - y) <= CLOSE * y || y <= 1e-12) {
        return next;
      }
      y = next == critical ? (y + critical) / 2 : next;
    }
    return y;
  }

  /** The fast depth; critical where the force is the least or less. */
  double fastDepth(double flow, double force, double critical) {
    if (force <= force(flow, critical)) {
      return critical;
    }
    double low = 0;
    double high = critical;
    double y = critical * 0.9;
    for (int i = 0; i < MOST_STEPS && high - low > CLOSE * critical; i++) {
      double area = section.area(y);
      double over = force(flow, y, area) - force;
      if (over > 0) {
        low = y;
      } else {
        high = y;
      }
      double next = y - over / slope(flow, y, area);
      next = next > low && next < high ? next : (low + high) / 2;
      if (Math.abs(next - y) <= CLOSE * y) {
        return next;
      }
      y = next;
    }
    return y;
  }

  /** How the force grows with depth. */
  private double slope(double flow, double depth, double area) {
    return area - flow * flow * section.topWidth(depth) / (GRAVITY * area * area);
  }

  /** Manning's friction slope. */
  double friction(double flow, double depth) {
    if (flow == 0 || roughness == 0) {
      return 0;
    }
    double area = section.area(depth);
    double radius = area / section.wettedPerimeter(depth);
    return sq(roughness * flow / area) / Math.pow(radius, 4.0 / 3);
  }

  private static double sq(double v) {
    return v * v;
  }
}
