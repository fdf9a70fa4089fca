package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Plies of different depth, flush at the top or the bottom, and plies a little short. */
final class UnequalPlies implements FramingCase {
  @Override
  public String name() {
    return "plies of different depth or length";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    deck.joists();
    List<Truth.Line> lines = new ArrayList<>();
    boolean[] doubled = new boolean[deck.u.length];
    for (int i = 0; i < deck.u.length; i++) {
      List<String> members = new ArrayList<>(List.of(SimpleDeck.name(i)));
      double depth = deck.d;
      doubled[i] = i > 0 && i < deck.u.length - 1 && random.nextBoolean();
      if (doubled[i]) {
        String key = "ply-" + i;
        double own = deck.d * deck.pick(1, 0.65, 0.75, 1.28);
        boolean flushTop = own > deck.d || random.nextBoolean();
        double z = flushTop ? deck.top - own : deck.bottom();
        double from = deck.pick(0, 10, 30);
        double to = deck.run - deck.pick(0, 10, 30);
        double u = deck.u[i] + deck.w;
        deck.joist(key, deck.box(u, from, z, u + deck.w, to, z + own));
        members.add(key);
        depth = Math.max(depth, own);
      }
      lines.add(new Truth.Line(members, members.size(), members.size() * deck.w, depth));
    }
    deck.held(0);
    List<Truth.Bay> bays = new ArrayList<>();
    for (Truth.Bay bay : deck.bays()) {
      double width = bay.widths().get(0)[1] - (doubled[bay.left()] ? deck.w : 0);
      bays.add(Truth.Bay.plain(bay.left(), bay.right(), deck.run, width));
    }
    return deck.model(lines, bays);
  }
}
