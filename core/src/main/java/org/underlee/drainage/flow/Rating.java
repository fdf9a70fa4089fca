package org.underlee.drainage.flow;

/**
 * What a method says of one part, against what must pass it.
 *
 * @param demand cubic metres per second
 */
public record Rating(Part part, Capacity capacity, double demand) {
  /** What is rated. */
  public enum Part {
    GUTTER,
    OUTLET,
    DOWNSPOUT
  }

  public boolean passes() {
    return demand <= capacity.flow();
  }

  /** Demand over capacity: above 1 it fails. */
  public double use() {
    return demand == 0 ? 0 : demand / capacity.flow();
  }
}
