package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/**
 * A deck around one corner of a house, or around two: in front joists run out to a doubled joist at
 * each corner, beside the house they start at the side wall and further out at that doubled joist.
 */
final class RightAngleWrap implements FramingCase {
  @Override
  public String name() {
    return "right-angle wraps, L and U";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    boolean both = random.nextBoolean();
    int n = 5 + random.nextInt(4);
    double width = n * yard.spacing;
    double run = 1800 + random.nextInt(1500);
    Plot front = yard.plot("front", 0, 0, Xyz.Y);
    double left = both ? 0 : -yard.w / 2;
    for (int i = 0; i <= n; i++) {
      boolean corner = i == n || i == 0 && both;
      double u = i * yard.spacing - (corner ? yard.w : yard.w / 2);
      front.line("j" + i, "joist", corner ? 2 : 1, u, 0, run);
    }
    left = both ? -yard.w : left;
    front
        .ledger(left, width)
        .rim(run, left, width + yard.w)
        .posts("post", run + yard.w / 2, left, width, yard.bottom());
    front.wall(both ? 0 : -2000, width);
    List<Truth.Field> fields = new ArrayList<>();
    fields.add(front.field(front.bays(Plot.at(0), Plot.at(run))));
    fields.add(side(yard, "right", width + yard.w, Xyz.X, front, "j" + n, run));
    if (both) {
      fields.add(side(yard, "left", -yard.w, Xyz.X.times(-1), front, "j0", run));
    }
    return yard.model(new Truth.Deck(true, fields));
  }

  /** The field beside the house; {@code x} is the doubled joist's outer face. */
  private static Truth.Field side(
      Yard yard, String key, double x, Xyz fall, Plot front, String corner, double run) {
    Plot plot = yard.plot(key, x, 0, fall);
    double way = plot.frame.x().y(); // −1 on the right, where u points back along the house
    int along = 3 + yard.random.nextInt(3);
    int out = (int) (run / yard.spacing);
    double width = 1500 + yard.random.nextInt(1200);
    List<Double> at = new ArrayList<>();
    for (int i = -along; i <= out; i++) {
      at.add(way * (i * yard.spacing + yard.spacing / 3));
    }
    at.sort(Double::compare);
    for (int i = 0; i < at.size(); i++) {
      plot.line("k" + i, "joist", 1, at.get(i) - yard.w / 2, 0, width);
    }
    double from = plot.faces.get(0)[0];
    double to = plot.faces.get(at.size() - 1)[1];
    // along the side wall, which begins at the corner of the house
    double houseFrom = way < 0 ? yard.w : from;
    double houseTo = way < 0 ? to : -yard.w;
    plot.ledger(houseFrom, houseTo).rim(width, from, to);
    plot.posts("post", width + yard.w / 2, from, to, yard.bottom());
    plot.wall(way < 0 ? yard.w : from - 1500, way < 0 ? to + 1500 : -yard.w);
    return plot.field(plot.bays(Plot.at(0), Plot.at(width)));
  }
}
