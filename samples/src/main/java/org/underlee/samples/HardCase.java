package org.underlee.samples;

/**
 * A small deck that is hard to lay out in one way, and how it is to be laid out.
 *
 * @param kit name of a built-in kit
 * @param boardsOff whether the boards are off, as a membrane over the joists needs
 */
public record HardCase(SampleDeck deck, String kit, boolean boardsOff) {
  /** The folder of all cases, in that of the samples. */
  public static final String FOLDER = "hard-cases";

  @Override
  public String toString() {
    return deck.name();
  }
}
