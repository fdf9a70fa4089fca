package org.underlee.run;

import java.util.Optional;
import org.underlee.framing.AssumedJoists;

/**
 * How to read a model, beyond the model itself.
 *
 * @param assume joists to assume where the model has a slab only
 */
public record SurveyRequest(Optional<AssumedJoists> assume) {
  /** Nothing but what is in the model. */
  public static final SurveyRequest PLAIN = new SurveyRequest(Optional.empty());
}
