package org.underlee.samples.cases;

import java.util.Random;

/** Sawn joists between a ledger and a rim. */
final class SingleJoists implements FramingCase {
  @Override
  public String name() {
    return "single joists";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    deck.joists().held(0);
    return deck.model(deck.lines(), deck.bays());
  }
}
