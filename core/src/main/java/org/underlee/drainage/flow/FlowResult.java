package org.underlee.drainage.flow;

import java.util.Comparator;
import java.util.List;

/**
 * A gutter and its downspouts, worked out and rated.
 *
 * @param freeboard metres from the deepest water to the rim; negative when it overtops
 * @param ratings what every method says, those that may not decide too
 */
public record FlowResult(FlowProfile profile, double freeboard, List<Rating> ratings) {
  public FlowResult {
    ratings = List.copyOf(ratings);
  }

  /** The accepted method that leaves the least: it governs. */
  public Rating governing() {
    return ratings.stream()
        .filter(r -> r.capacity().accepted())
        .max(Comparator.comparingDouble(Rating::use))
        .orElseThrow(() -> new IllegalStateException("no method is accepted, so none can govern"));
  }

  public boolean passes() {
    return governing().passes();
  }
}
