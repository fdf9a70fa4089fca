package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/**
 * Decks at two or three heights of one wall: beside each other, or balconies one above the other.
 */
final class SeveralLevels implements FramingCase {
  @Override
  public String name() {
    return "several levels, beside and above each other";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int levels = 2 + random.nextInt(2);
    boolean stacked = random.nextBoolean();
    List<Truth.Deck> decks = new ArrayList<>();
    List<Piece> pieces = new ArrayList<>();
    double u = 0;
    for (int level = 0; level < levels; level++) {
      // the posts of a balcony stand on the boards of the one below, not between its joists
      double step = stacked ? Math.max(2800, yard.top + 50) : 180 + random.nextInt(500);
      Plot plot = yard.plot("level" + level, stacked ? 0 : u, 0, Xyz.Y);
      int n = 4 + random.nextInt(4);
      double run = 1500 + random.nextInt(1500);
      double width = (n - 1) * yard.spacing + yard.w;
      for (int i = 0; i < n; i++) {
        plot.line("j" + i, "joist", 1, i * yard.spacing, 0, run);
      }
      plot.ledger(0, width).rim(run, 0, width);
      plot.posts("post", run + yard.w / 2 - (stacked ? 3 * level : 0), 0, width, yard.bottom());
      decks.add(new Truth.Deck(true, List.of(plot.field(plot.bays(Plot.at(0), Plot.at(run))))));
      for (Piece piece : yard.pieces) {
        pieces.add(raised(piece, level * step));
      }
      yard.pieces.clear();
      u += width + 300;
    }
    yard.pieces.addAll(pieces);
    double high = yard.top + 2400 + (stacked ? levels * Math.max(2800, yard.top + 50) : 2400);
    yard.wall("house", -1500, -yard.w - 200, 12000, -yard.w, 0, high);
    return yard.model(decks.toArray(Truth.Deck[]::new));
  }

  /** Posts are raised too: those of a balcony stand on the one below. */
  private static Piece raised(Piece piece, double by) {
    var up = org.underlee.samples.Frame.at(new Xyz(0, 0, by));
    return new Piece(
        piece.key(),
        piece.kind(),
        piece.role(),
        piece.level(),
        piece.bodies().stream().map(b -> b.in(up)).toList());
  }
}
