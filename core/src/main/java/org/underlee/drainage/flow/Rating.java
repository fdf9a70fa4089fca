package org.underlee.drainage.flow;

import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * What a method says of one part, against what must pass it.
 *
 * @param demand cubic metres per second
 */
public record Rating(Part part, Capacity capacity, double demand) {
  /** What is rated. */
  public enum Part {
    @JsonProperty("gutter")
    GUTTER,
    @JsonProperty("outlet")
    OUTLET,
    @JsonProperty("downspout")
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
