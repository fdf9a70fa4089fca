package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import org.underlee.samples.cases.Piece.Kind;

/** Sleepers on a slab, or on edge across the joists of a deck, with boards: no joists of a deck. */
final class Sleepers implements FramingCase {
  @Override
  public String name() {
    return "sleepers on a slab or across joists";
  }

  @Override
  public Model make(Random random) {
    return random.nextBoolean() ? onSlab(random) : acrossJoists(random);
  }

  private static Model onSlab(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    double depth = deck.pick(60, 63, 89);
    double to = deck.last() + 500;
    boolean named = random.nextBoolean();
    deck.piece(
        "slab",
        named ? Kind.SLAB : Kind.BAR,
        "none",
        deck.box(-500, -500, deck.top - 200, to, deck.run + 500, deck.top));
    for (int i = 0; i < deck.u.length; i++) {
      deck.piece(
          "sleeper-" + i,
          Kind.BAR,
          "sleeper",
          deck.box(deck.u[i], 0, deck.top, deck.u[i] + 45, deck.run, deck.top + depth));
    }
    return new Model(2, deck.pieces, new Truth(List.of()));
  }

  private static Model acrossJoists(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    deck.joists().held(0);
    deck.pieces.removeIf(p -> p.kind() == Kind.BOARD);
    double depth = deck.pick(60, 63, 75);
    int n = 0;
    for (double v = 50; v + 45 < deck.run; v += deck.pick(400, 500)) {
      deck.piece(
          "sleeper-" + n++,
          Kind.BAR,
          "sleeper",
          deck.box(deck.u[0], v, deck.top, deck.last(), v + 45, deck.top + depth));
    }
    return deck.model(deck.lines(), deck.bays());
  }
}
