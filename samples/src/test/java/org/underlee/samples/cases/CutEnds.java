package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;

/** Ends mitred in plan or bevelled in the side view, by up to 60 mm. */
final class CutEnds implements FramingCase {
  @Override
  public String name() {
    return "clipped and mitred ends";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    boolean mitred = random.nextBoolean();
    for (int i = 0; i < deck.u.length; i++) {
      double near = deck.between(0, 60);
      double far = deck.between(0, 60);
      deck.joist(
          SimpleDeck.name(i),
          mitred ? mitred(deck, deck.u[i], near, far) : bevelled(deck, deck.u[i], near, far));
    }
    deck.held(0);
    return deck.model(deck.lines(), deck.bays());
  }

  private static Body mitred(SimpleDeck deck, double u, double near, double far) {
    double right = u + deck.w;
    return Shapes.upward(
        List.of(
            Shapes.at(u, 0),
            Shapes.at(right, near),
            Shapes.at(right, deck.run),
            Shapes.at(u, deck.run - far)),
        List.of(),
        deck.bottom(),
        deck.top);
  }

  private static Body bevelled(SimpleDeck deck, double u, double near, double far) {
    return Shapes.alongU(
        List.of(
            Shapes.at(0, deck.bottom()),
            Shapes.at(deck.run - far, deck.bottom()),
            Shapes.at(deck.run, deck.top),
            Shapes.at(near, deck.top)),
        List.of(),
        u,
        u + deck.w);
  }
}
