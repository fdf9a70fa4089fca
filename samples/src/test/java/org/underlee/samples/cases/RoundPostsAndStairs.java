package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.cases.Piece.Kind;

/** Round posts under the rim, guard posts on its face, stringers from the rim to the ground. */
final class RoundPostsAndStairs implements FramingCase {
  @Override
  public String name() {
    return "round posts, guard posts, stringers";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    deck.joists().held(0);
    deck.pieces.removeIf(p -> p.kind() == Kind.UPRIGHT);
    double middle = deck.run + deck.w / 2;
    for (int p = 1; p <= 2; p++) {
      double at = p == 1 ? 150 : deck.last() - 150;
      deck.piece(
          "post-" + p,
          Kind.UPRIGHT,
          "post",
          Shapes.upward(
              Shapes.circle(at, middle, deck.pick(90, 140, 200)), List.of(), 0, deck.bottom()));
    }
    double face = deck.run + deck.w;
    for (int g = 0; g < 3; g++) {
      double at = 60 + g * (deck.last() - 120) / 2;
      deck.piece(
          "guard-" + g,
          Kind.UPRIGHT,
          "guard-post",
          random.nextBoolean()
              ? deck.box(at - 45, face, deck.bottom(), at + 45, face + 90, deck.top + 1000)
              : Shapes.upward(
                  Shapes.circle(at, face + 30, 60), List.of(), deck.bottom(), deck.top + 1000));
    }
    stringers(deck, face);
    return deck.model(deck.lines(), deck.bays());
  }

  /** Notched boards that rise at 35° to the rim's face, a step below the deck. */
  private static void stringers(SimpleDeck deck, double face) {
    double going = 260;
    double rise = 180;
    int steps = 5;
    double head = deck.top - rise;
    for (int s = 0; s < 2; s++) {
      double u = deck.last() / 2 - 400 + 700 * s;
      List<double[]> ring = new ArrayList<>();
      for (int i = 0; i < steps; i++) {
        ring.add(Shapes.at(face + i * going, head - i * rise));
        ring.add(Shapes.at(face + (i + 1) * going, head - i * rise));
      }
      ring.add(Shapes.at(face + steps * going, head - steps * rise));
      ring.add(Shapes.at(face, head - 300));
      java.util.Collections.reverse(ring);
      deck.piece("stringer-" + s, Kind.BAR, "stringer", Shapes.alongU(ring, List.of(), u, u + 40));
    }
  }
}
