package org.underlee.framing;

import java.util.List;
import java.util.Optional;

/**
 * One walking level.
 *
 * @param top height of the joist tops, world metres
 * @param outside whether this is an outside deck, with the evidence
 */
public record Deck(
    String id, Optional<Storey> storey, double top, Judgement outside, List<Field> fields) {
  /** A yes or no with its reason. */
  public record Judgement(boolean value, String why) {}
}
