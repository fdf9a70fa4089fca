package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/** Trusses: two chords and a web of struts, one element of many solids. */
final class OpenWebJoists implements FramingCase {
  private static final double CHORD = 40;

  @Override
  public String name() {
    return "open-web joists";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    for (int i = 0; i < deck.u.length; i++) {
      deck.joist(SimpleDeck.name(i), truss(deck, deck.u[i]));
    }
    deck.held(0);
    return deck.model(deck.lines(), deck.bays());
  }

  private static Body[] truss(SimpleDeck deck, double u) {
    List<Body> bodies = new ArrayList<>();
    double z0 = deck.bottom();
    double z1 = deck.top;
    bodies.add(deck.box(u, 0, z0, u + deck.w, deck.run, z0 + CHORD));
    bodies.add(deck.box(u, 0, z1 - CHORD, u + deck.w, deck.run, z1));
    int panels = (int) (deck.run / 300);
    double step = (deck.run - 40) / panels;
    double middle = u + deck.w / 2;
    for (int p = 0; p < panels; p++) {
      double low = p % 2 == 0 ? z0 + CHORD / 2 : z1 - CHORD / 2;
      double high = p % 2 == 0 ? z1 - CHORD / 2 : z0 + CHORD / 2;
      bodies.add(
          Shapes.between(
              Shapes.rectangle(-12, -12, 12, 12),
              new Xyz(middle, 20 + p * step, low),
              new Xyz(middle, 20 + (p + 1) * step, high)));
    }
    return bodies.toArray(Body[]::new);
  }
}
