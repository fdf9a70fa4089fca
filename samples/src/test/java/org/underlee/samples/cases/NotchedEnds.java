package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.underlee.samples.Xyz;
import org.underlee.samples.cases.Piece.Kind;

/**
 * Joists notched a quarter to a third of their depth at the ledger, often over a strip nailed to
 * it. The strip bounds what can hang at the joists' bottoms, so the bay starts at its face.
 */
final class NotchedEnds implements FramingCase {
  @Override
  public String name() {
    return "notched ends, over a ledger strip";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    double height = deck.d / deck.pick(3, 4) + 1;
    double strip = deck.pick(38, 45);
    boolean withStrip = random.nextBoolean();
    for (int i = 0; i < deck.u.length; i++) {
      deck.joist(
          SimpleDeck.name(i),
          Shapes.alongU(
              List.of(
                  Shapes.at(strip, deck.bottom()),
                  Shapes.at(deck.run, deck.bottom()),
                  Shapes.at(deck.run, deck.top),
                  Shapes.at(0, deck.top),
                  Shapes.at(0, deck.bottom() + height),
                  Shapes.at(strip, deck.bottom() + height)),
              List.of(),
              deck.u[i],
              deck.u[i] + deck.w));
    }
    deck.held(0);
    if (!withStrip) {
      return deck.model(deck.lines(), deck.bays());
    }
    deck.piece(
        "strip",
        Kind.BAR,
        "ledger",
        deck.box(deck.u[0], 0, deck.bottom(), deck.last(), strip, deck.bottom() + height));
    Map<String, List<String>> supports = new HashMap<>(SimpleDeck.supports());
    supports.put("ledgers", List.of("ledger", "strip"));
    List<Truth.Bay> bays = new ArrayList<>();
    for (Truth.Bay bay : deck.bays()) {
      bays.add(Truth.Bay.plain(bay.left(), bay.right(), deck.run - strip, bay.widths().get(0)[1]));
    }
    Truth.Field field = new Truth.Field(Xyz.Y, deck.lines(), supports, bays);
    return new Model(2, deck.pieces, new Truth(List.of(new Truth.Deck(true, List.of(field)))));
  }
}
