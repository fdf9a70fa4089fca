package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Lines of two to four plies of one section, up to 5 mm apart, among single joists. */
final class SeveralPlies implements FramingCase {
  @Override
  public String name() {
    return "lines of 2 to 4 plies";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    List<Truth.Line> lines = new ArrayList<>();
    double[] left = new double[deck.u.length];
    double[] right = new double[deck.u.length];
    for (int i = 0; i < deck.u.length; i++) {
      int plies = i == 0 ? 1 : 1 + random.nextInt(4);
      double gap = deck.pick(0, 0, 1, 5);
      List<String> members = new ArrayList<>();
      for (int p = 0; p < plies; p++) {
        String key = SimpleDeck.name(i) + "-" + p;
        // the line is centred where the single joist would be, the last one ends there
        double shift = i + 1 < deck.u.length ? p - (plies - 1) / 2.0 : p - (plies - 1);
        double at = deck.u[i] + shift * (deck.w + gap);
        deck.joist(key, at, 0, deck.run);
        members.add(key);
        left[i] = p == 0 ? at : left[i];
        right[i] = at + deck.w;
      }
      lines.add(new Truth.Line(members, plies, right[i] - left[i], deck.d));
    }
    deck.held(0);
    List<Truth.Bay> bays = new ArrayList<>();
    for (int i = 0; i + 1 < left.length; i++) {
      bays.add(Truth.Bay.plain(i, i + 1, deck.run, left[i + 1] - right[i]));
    }
    return deck.model(lines, bays);
  }
}
