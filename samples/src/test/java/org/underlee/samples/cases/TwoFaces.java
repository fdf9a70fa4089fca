package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/** Balconies on both sides of one wall, or on two faces of one building. */
final class TwoFaces implements FramingCase {
  @Override
  public String name() {
    return "balconies on both sides of a wall or a building";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    double thick = random.nextBoolean() ? 200 : 5000 + random.nextInt(4000);
    double length = 4000 + random.nextInt(3000);
    double half = length / 2;
    if (thick == 200) {
      yard.wall("middle", -half, -100, half, 100, 0, yard.top + 2400);
    } else {
      yard.wall("north", -half, thick / 2 - 200, half, thick / 2, 0, yard.top + 2400);
      yard.wall("south", -half, -thick / 2, half, 200 - thick / 2, 0, yard.top + 2400);
      yard.wall("west", -half - 200, -thick / 2, -half, thick / 2, 0, yard.top + 2400);
      yard.wall("east", half, -thick / 2, half + 200, thick / 2, 0, yard.top + 2400);
    }
    List<Truth.Field> fields = new ArrayList<>();
    for (Xyz fall : List.of(Xyz.Y, Xyz.Y.times(-1))) {
      Plot plot = yard.plot("face" + fields.size(), 0, fall.y() * (thick / 2 + yard.w), fall);
      int n = 4 + random.nextInt((int) (length / yard.spacing) - 4);
      double run = 1200 + random.nextInt(1000);
      for (int i = 0; i < n; i++) {
        plot.line("j" + i, "joist", 1, i * yard.spacing - half, 0, run);
      }
      double to = (n - 1) * yard.spacing + yard.w - half;
      plot.ledger(-half, to).rim(run, -half, to);
      if (random.nextBoolean()) {
        plot.posts("post", run + yard.w / 2, -half, to, yard.bottom());
      }
      fields.add(plot.field(plot.bays(Plot.at(0), Plot.at(run))));
    }
    return yard.model(new Truth.Deck(true, fields));
  }
}
