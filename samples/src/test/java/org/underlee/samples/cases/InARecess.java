package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/**
 * A deck in an inner corner of the house, or in a recess between two wings that is at least as wide
 * as it is deep: open in front.
 */
final class InARecess implements FramingCase {
  @Override
  public String name() {
    return "decks in a corner or a recess of the house";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    double run = 1500 + random.nextInt(1500);
    double out = run + yard.between(0, 1000);
    int n = (int) (out / yard.spacing) + 3 + random.nextInt(4);
    double width = (n - 1) * yard.spacing + yard.w;
    boolean wings = random.nextBoolean();
    Plot plot = yard.plot("field", 0, 0, Xyz.Y);
    for (int i = 0; i < n; i++) {
      plot.line("j" + i, "joist", 1, i * yard.spacing, 0, run);
    }
    plot.ledger(0, width).rim(run, 0, width).wall(-250, wings ? width + 250 : width + 2000);
    plot.posts("post", run + yard.w / 2, 0, width, yard.bottom());
    yard.wall("wing-left", -250, -yard.w, -50, out, 0, yard.top + 2400);
    if (wings) {
      yard.wall("wing-right", width + 50, -yard.w, width + 250, out, 0, yard.top + 2400);
    }
    return yard.model(
        new Truth.Deck(true, List.of(plot.field(plot.bays(Plot.at(0), Plot.at(run))))));
  }
}
