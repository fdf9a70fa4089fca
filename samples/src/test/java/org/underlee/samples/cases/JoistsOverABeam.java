package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.underlee.samples.Xyz;
import org.underlee.samples.cases.Piece.Kind;

/**
 * Two rows of joists that meet over a drop beam: lapped side by side, each line then stepping over
 * by its own width, or butted end to end with a saw's gap.
 */
final class JoistsOverABeam implements FramingCase {
  private final boolean lapped;

  JoistsOverABeam(boolean lapped) {
    this.lapped = lapped;
  }

  @Override
  public String name() {
    return lapped ? "joists lapped over a beam" : "joists spliced end to end over a beam";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    double middle = deck.run * deck.between(0.4, 0.6);
    double half = lapped ? deck.between(60, 250) : -deck.between(0, 4);
    double shift = lapped ? deck.w : 0;
    List<Truth.Line> lines = new ArrayList<>();
    for (int i = 0; i < deck.u.length; i++) {
      String near = "near-" + i;
      String far = "far-" + i;
      deck.joist(near, deck.u[i], 0, middle + half);
      deck.joist(far, deck.u[i] + shift, middle - half, deck.run);
      lines.add(
          new Truth.Line(List.of(near, far), lapped ? 2 : 1, lapped ? 2 * deck.w : deck.w, deck.d));
    }
    deck.held(lapped ? deck.w : 0);
    beam(deck, middle);
    List<Truth.Bay> bays = new ArrayList<>();
    for (Truth.Bay bay : deck.bays()) {
      double width = bay.widths().get(0)[1];
      bays.add(lapped ? stepped(deck, bay, width, middle - half, middle + half) : bay);
    }
    Map<String, List<String>> supports = new HashMap<>(SimpleDeck.supports());
    supports.put("beams", List.of("beam"));
    supports.put("posts", List.of("post-1", "post-2", "beam-post-1", "beam-post-2"));
    Truth.Field field = new Truth.Field(Xyz.Y, lines, supports, bays);
    return new Model(2, deck.pieces, new Truth(List.of(new Truth.Deck(true, List.of(field)))));
  }

  private static void beam(SimpleDeck deck, double middle) {
    double z = deck.bottom();
    double to = deck.last() + deck.w;
    deck.piece(
        "beam",
        Kind.BAR,
        "drop-beam",
        deck.box(deck.u[0] - 100, middle - 45, z - 235, to + 100, middle + 45, z));
    for (int p = 1; p <= 2; p++) {
      double at = p == 1 ? deck.u[0] + 60 : to - 60;
      deck.pieces.add(
          new Piece(
              "beam-post-" + p,
              Kind.UPRIGHT,
              "post",
              SimpleDeck.GROUND,
              List.of(deck.box(at - 45, middle - 45, 0, at + 45, middle + 45, z - 235))));
    }
  }

  /** Narrower by one width more where the two pieces lie side by side. */
  private static Truth.Bay stepped(
      SimpleDeck deck, Truth.Bay bay, double width, double from, double to) {
    List<double[]> widths =
        List.of(
            Shapes.at(0, width),
            Shapes.at(from, width),
            Shapes.at(from, width - deck.w),
            Shapes.at(to, width - deck.w),
            Shapes.at(to, width),
            Shapes.at(deck.run, width));
    return new Truth.Bay(
        bay.left(), bay.right(), deck.run, widths, List.of(), List.of(), List.of());
  }
}
