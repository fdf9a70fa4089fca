package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.cases.Piece.Kind;

/** Blocks of the full depth or shallow ones, in a row, staggered, single or doubled. */
final class BlockedBays implements FramingCase {
  @Override
  public String name() {
    return "blocking, full, shallow, staggered, double";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    deck.joists().held(0);
    boolean staggered = random.nextBoolean();
    int plies = 1 + random.nextInt(2);
    double height = random.nextBoolean() ? deck.d : deck.d * deck.pick(0.4, 0.6, 0.75);
    double below = height < deck.d && random.nextBoolean() ? deck.between(0, deck.d - height) : 0;
    double row = deck.run * deck.between(0.35, 0.6);
    List<Truth.Bay> bays = new ArrayList<>();
    for (Truth.Bay bay : deck.bays()) {
      List<Truth.Block> blocks = new ArrayList<>();
      double v = row + (staggered && bay.left() % 2 == 1 ? deck.w : 0);
      for (int p = 0; p < plies; p++) {
        String key = "block-" + bay.left() + "-" + p;
        double from = v + p * deck.w;
        double z = deck.top - below - height;
        deck.piece(
            key,
            Kind.BAR,
            "blocking",
            deck.box(
                deck.u[bay.left()] + deck.w,
                from,
                z,
                deck.u[bay.right()],
                from + deck.w,
                z + height));
        blocks.add(new Truth.Block(key, from + deck.w / 2, deck.w, z - deck.bottom()));
      }
      bays.add(bay.with(blocks));
    }
    return deck.model(deck.lines(), bays);
  }
}
