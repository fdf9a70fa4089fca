package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.cases.Piece.Kind;

/**
 * Each joist with a crown of its own, 0 to 20 mm up in the middle of its length; blocking at mid
 * length stands flush with the crowned bottoms.
 */
final class CrownedJoists implements FramingCase {
  private static final int SEGMENTS = 16;

  @Override
  public String name() {
    return "crowned joists";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    double[] crown = new double[deck.u.length];
    for (int i = 0; i < deck.u.length; i++) {
      crown[i] = deck.between(0, 20);
      deck.joist(
          SimpleDeck.name(i),
          Shapes.alongU(outline(deck, crown[i]), List.of(), deck.u[i], deck.u[i] + deck.w));
    }
    deck.held(0);
    if (random.nextBoolean()) {
      return deck.model(deck.lines(), deck.bays());
    }
    List<Truth.Bay> bays = new ArrayList<>();
    double v = deck.run / 2 - deck.w / 2;
    for (Truth.Bay bay : deck.bays()) {
      String key = "block-" + bay.left();
      double z = deck.bottom() + Math.max(crown[bay.left()], crown[bay.right()]) + 30;
      deck.piece(
          key,
          Kind.BAR,
          "blocking",
          deck.box(
              deck.u[bay.left()] + deck.w, v, z, deck.u[bay.right()], v + deck.w, z + deck.d - 45));
      bays.add(bay.with(List.of(new Truth.Block(key, deck.run / 2, deck.w, 30))));
    }
    return deck.model(deck.lines(), bays);
  }

  private static List<double[]> outline(SimpleDeck deck, double crown) {
    List<double[]> ring = new ArrayList<>();
    for (int s = 0; s <= SEGMENTS; s++) {
      ring.add(Shapes.at(deck.run * s / SEGMENTS, deck.bottom() + rise(crown, s)));
    }
    for (int s = SEGMENTS; s >= 0; s--) {
      ring.add(Shapes.at(deck.run * s / SEGMENTS, deck.top + rise(crown, s)));
    }
    return ring;
  }

  private static double rise(double crown, int s) {
    double x = (double) s / SEGMENTS;
    return 4 * crown * x * (1 - x);
  }
}
