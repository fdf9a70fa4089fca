package org.underlee.samples;

import java.util.Set;

/**
 * A small deck that is hard to lay out in one way, and how it is to be laid out.
 *
 * @param kit name of a built-in kit
 * @param boardsOff whether the boards are off, as a membrane over the joists needs
 * @param bothWays fields that are to fall both ways
 */
public record HardCase(SampleDeck deck, String kit, boolean boardsOff, Set<String> bothWays) {
  /** Whose fields fall one way. */
  public HardCase(SampleDeck deck, String kit, boolean boardsOff) {
    this(deck, kit, boardsOff, Set.of());
  }

  HardCase fallingBothWays(String field) {
    return new HardCase(deck, kit, boardsOff, Set.of(field));
  }

  /** The folder of all cases, in that of the samples. */
  public static final String FOLDER = "hard-cases";

  @Override
  public String toString() {
    return deck.name();
  }
}
