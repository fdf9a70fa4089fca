package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Joists with round holes, up to a third of their depth across. */
final class HoledJoists implements FramingCase {
  @Override
  public String name() {
    return "round holes through joists";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    for (int i = 0; i < deck.u.length; i++) {
      List<List<double[]>> holes = new ArrayList<>();
      double middle = (deck.bottom() + deck.top) / 2;
      for (double v = deck.between(200, 500); v < deck.run - 200; v += deck.between(300, 900)) {
        holes.add(Shapes.circle(v, middle, deck.d * deck.between(0.1, 0.33)));
      }
      deck.joist(
          SimpleDeck.name(i),
          Shapes.alongU(
              Shapes.rectangle(0, deck.bottom(), deck.run, deck.top),
              holes,
              deck.u[i],
              deck.u[i] + deck.w));
    }
    deck.held(0);
    return deck.model(deck.lines(), deck.bays());
  }
}
