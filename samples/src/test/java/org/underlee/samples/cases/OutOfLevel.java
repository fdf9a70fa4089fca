package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import org.underlee.samples.Frame;
import org.underlee.samples.Xyz;

/** Joists that each sit up to 4 mm too high or too low, and out of level by up to 5 mm. */
final class OutOfLevel implements FramingCase {
  @Override
  public String name() {
    return "joists out of level by a few millimetres";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int n = 5 + random.nextInt(5);
    double width = (n - 1) * yard.spacing + yard.w;
    double run = 2200 + random.nextInt(2000);
    Plot plot = yard.plot("field", 0, 0, Xyz.Y);
    for (int i = 0; i < n; i++) {
      plot.line("j" + i, "joist", 1, i * yard.spacing, 0, run);
      Piece joist = yard.pieces.remove(yard.pieces.size() - 1);
      double tilt = yard.between(-5, 5) / run;
      Xyz v = new Xyz(0, 1, tilt).unit();
      Frame moved = Frame.of(new Xyz(0, 0, yard.between(-4, 4)), Xyz.X, v);
      yard.add(
          joist.key(), joist.kind(), joist.role(), joist.level(), joist.bodies().get(0).in(moved));
    }
    plot.ledger(0, width).rim(run, 0, width).wall(-1500, width + 1500);
    plot.posts("post", run + yard.w / 2, 0, width, yard.bottom());
    return yard.model(
        new Truth.Deck(true, List.of(plot.field(plot.bays(Plot.at(0), Plot.at(run))))));
  }
}
