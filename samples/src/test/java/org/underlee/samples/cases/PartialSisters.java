package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Second plies over a part of some joists: the bays beside them are wider where they are not. */
final class PartialSisters implements FramingCase {
  @Override
  public String name() {
    return "sisters over part of the length";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    deck.joists();
    double[] from = new double[deck.u.length];
    double[] to = new double[deck.u.length];
    List<Truth.Line> lines = new ArrayList<>();
    for (int i = 0; i < deck.u.length; i++) {
      List<String> members = new ArrayList<>(List.of(SimpleDeck.name(i)));
      if (i < deck.u.length - 1 && random.nextInt(2) == 0) {
        // from the ledger, to the rim, or between
        int where = random.nextInt(3);
        double length = deck.between(600, 0.7 * deck.run);
        from[i] =
            where == 0
                ? 0
                : where == 1 ? deck.run - length : deck.between(100, deck.run - length - 100);
        to[i] = from[i] + length;
        deck.joist("sister-" + i, deck.u[i] + deck.w, from[i], to[i]);
        members.add("sister-" + i);
      }
      lines.add(new Truth.Line(members, members.size(), members.size() * deck.w, deck.d));
    }
    deck.held(0);
    List<Truth.Bay> bays = new ArrayList<>();
    for (Truth.Bay bay : deck.bays()) {
      bays.add(narrowed(deck, bay, from[bay.left()], to[bay.left()]));
    }
    return deck.model(lines, bays);
  }

  private static Truth.Bay narrowed(SimpleDeck deck, Truth.Bay bay, double from, double to) {
    if (to == 0) {
      return bay;
    }
    double wide = bay.widths().get(0)[1];
    double narrow = wide - deck.w;
    List<double[]> widths = new ArrayList<>();
    if (from > 0) {
      widths.addAll(List.of(Shapes.at(0, wide), Shapes.at(from, wide), Shapes.at(from, narrow)));
    } else {
      widths.add(Shapes.at(0, narrow));
    }
    if (to < deck.run) {
      widths.addAll(List.of(Shapes.at(to, narrow), Shapes.at(to, wide), Shapes.at(deck.run, wide)));
    } else {
      widths.add(Shapes.at(deck.run, narrow));
    }
    return new Truth.Bay(
        bay.left(), bay.right(), deck.run, widths, List.of(), List.of(), List.of());
  }
}
