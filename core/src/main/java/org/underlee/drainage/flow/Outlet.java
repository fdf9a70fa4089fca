package org.underlee.drainage.flow;

import java.util.Optional;

/**
 * Where a gutter gives its water away.
 *
 * @param at metres from the start of the gutter
 * @param opening the hole in its bottom; empty for an open end over which the water falls free
 * @param share of the opening that is clear: 1, or less with a strainer or leaves
 */
public record Outlet(double at, Optional<Opening> opening, double share) {
  public Outlet {
    if (!(share > 0 && share <= 1)) {
      throw new IllegalArgumentException(
          "the outlet at "
              + at
              + " m is clear to "
              + share
              + "; expected more than 0 and at most 1 (a blocked outlet is left out)");
    }
  }

  public static Outlet hole(double at, Opening opening) {
    return new Outlet(at, Optional.of(opening), 1);
  }

  public static Outlet openEnd(double at) {
    return new Outlet(at, Optional.empty(), 1);
  }

  /** The depth of water that drives a flow through it; zero at an open end. */
  public double head(double flow) {
    return opening.map(o -> Outlets.head(o, flow / share)).orElse(0.0);
  }
}
