package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;
import org.underlee.samples.cases.Piece.Kind;

/** Pairs of crossed struts between joists, of wood side by side or of steel straps. */
final class CrossBridging implements FramingCase {
  @Override
  public String name() {
    return "crossed bridging";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    deck.joists().held(0);
    boolean steel = random.nextBoolean();
    double thick = steel ? 3 : 19;
    double broad = steel ? 25 : 64;
    double inset = steel ? 2 : deck.between(12, 20);
    double row = deck.run * deck.between(0.4, 0.6);
    List<Truth.Bay> bays = new ArrayList<>();
    for (Truth.Bay bay : deck.bays()) {
      double from = deck.u[bay.left()] + deck.w;
      double to = deck.u[bay.right()];
      double low = deck.bottom() + broad / 2 + 5;
      double high = deck.top - broad / 2 - 5;
      List<Truth.Bridge> bridges = new ArrayList<>();
      for (int s = 0; s < 2; s++) {
        String key = "strut-" + bay.left() + "-" + s;
        double v = row + s * (thick + 1);
        deck.piece(
            key,
            Kind.BAR,
            "bridging",
            Shapes.between(
                Shapes.rectangle(-thick / 2, -broad / 2, thick / 2, broad / 2),
                new Xyz(from + inset, v, s == 0 ? low : high),
                new Xyz(to - inset, v, s == 0 ? high : low)));
        bridges.add(new Truth.Bridge(key, v));
      }
      bays.add(bay.bridged(bridges));
    }
    return deck.model(deck.lines(), bays);
  }
}
