package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.cases.Piece.Kind;

/** Pairs of joists a little apart with packers between them, for a divider board. */
final class SpacedPairs implements FramingCase {
  @Override
  public String name() {
    return "spaced pairs with packers";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    double gap = deck.pick(38, 45, 60);
    List<Truth.Line> lines = new ArrayList<>();
    List<Truth.Bay> bays = new ArrayList<>();
    double last = Double.NaN;
    for (int i = 0; i < deck.u.length; i++) {
      boolean pair = i > 0 && i < deck.u.length - 1 && random.nextBoolean();
      last = add(deck, SimpleDeck.name(i), deck.u[i], last, lines, bays);
      if (pair) {
        String key = SimpleDeck.name(i) + "-mate";
        last = add(deck, key, deck.u[i] + deck.w + gap, last, lines, bays);
        int bay = bays.size() - 1;
        bays.set(bay, bays.get(bay).with(packers(deck, i, gap)));
      }
    }
    deck.held(0);
    return deck.model(lines, bays);
  }

  private static double add(
      SimpleDeck deck,
      String key,
      double u,
      double last,
      List<Truth.Line> lines,
      List<Truth.Bay> bays) {
    deck.joist(key, u, 0, deck.run);
    lines.add(new Truth.Line(List.of(key), 1, deck.w, deck.d));
    if (!Double.isNaN(last)) {
      int n = lines.size();
      bays.add(Truth.Bay.plain(n - 2, n - 1, deck.run, u - last));
    }
    return u + deck.w;
  }

  private static List<Truth.Block> packers(SimpleDeck deck, int i, double gap) {
    List<Truth.Block> blocks = new ArrayList<>();
    double length = deck.between(150, 400);
    double from = deck.u[i] + deck.w;
    int n = 0;
    for (double v = 100; v + length < deck.run - 50; v += 900) {
      String key = "packer-" + i + "-" + n++;
      deck.piece(
          key,
          Kind.BAR,
          "packer",
          deck.box(from, v, deck.bottom(), from + gap, v + length, deck.top));
      blocks.add(new Truth.Block(key, v + length / 2, length, 0));
    }
    return blocks;
  }
}
