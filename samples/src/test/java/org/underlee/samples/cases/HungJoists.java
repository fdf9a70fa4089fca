package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import org.underlee.samples.cases.Piece.Kind;

/** Joists in hangers of bent sheet at the ledger, a few millimetres short of it; or with angles. */
final class HungJoists implements FramingCase {
  private static final double SHEET = 1.5;
  private static final double FLANGE = 35;
  private static final double SEAT = 50;

  @Override
  public String name() {
    return "joist hangers and angles";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    double short0 = deck.between(0, 5);
    boolean angles = random.nextBoolean();
    for (int i = 0; i < deck.u.length; i++) {
      deck.joist(SimpleDeck.name(i), deck.u[i], short0, deck.run);
      Body body = angles ? angle(deck, deck.u[i] + deck.w) : hanger(deck, deck.u[i]);
      deck.piece("hanger-" + i, Kind.FITTING, "hanger", body);
    }
    deck.held(60);
    return deck.model(deck.lines(), deck.bays());
  }

  /** A U round the joist: the sheet's section carried along the joist, with no flanges. */
  private static Body hanger(SimpleDeck deck, double u) {
    double z0 = deck.bottom();
    double z1 = z0 + 0.7 * deck.d;
    double right = u + deck.w;
    return Shapes.alongV(
        List.of(
            Shapes.at(u - SHEET, z0 - SHEET),
            Shapes.at(right + SHEET, z0 - SHEET),
            Shapes.at(right + SHEET, z1),
            Shapes.at(right, z1),
            Shapes.at(right, z0),
            Shapes.at(u, z0),
            Shapes.at(u, z1),
            Shapes.at(u - SHEET, z1)),
        List.of(),
        0,
        SEAT);
  }

  /** An L in plan: one leg on the joist's side, one on the ledger's face. */
  private static Body angle(SimpleDeck deck, double u) {
    return Shapes.upward(
        List.of(
            Shapes.at(u, 0),
            Shapes.at(u + FLANGE, 0),
            Shapes.at(u + FLANGE, SHEET),
            Shapes.at(u + SHEET, SHEET),
            Shapes.at(u + SHEET, SEAT),
            Shapes.at(u, SEAT)),
        List.of(),
        deck.bottom() + 20,
        deck.bottom() + 20 + 0.6 * deck.d);
  }
}
