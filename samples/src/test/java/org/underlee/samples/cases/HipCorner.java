package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.underlee.samples.Xyz;
import org.underlee.samples.cases.Piece.Kind;

/**
 * A deck around a corner of the house with a hip joist out from the corner at 45°: jack joists of
 * decreasing length run from it to the rims at both sides.
 */
final class HipCorner implements FramingCase {
  /** The shortest jack that is still a joist. */
  private static final double SHORTEST = 650;

  @Override
  public String name() {
    return "45° corners with a hip joist and jacks";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    double run = 2200 + random.nextInt(1600);
    double half = yard.w / 2 * (1 + random.nextInt(2)) * Math.sqrt(2); // of the hip, along u or v
    yard.add("hip", Kind.BAR, "joist", Yard.UPSTAIRS, hip(yard, run, half));
    Truth.Field front = side(yard, "front", Xyz.Y, 1, run, half);
    Truth.Field beside = side(yard, "beside", Xyz.X, -1, run, half);
    return yard.model(new Truth.Deck(true, List.of(front, beside)));
  }

  /** From the corner at the origin to the corner of the rims, its ends fitted into them. */
  private static Body hip(Yard yard, double run, double half) {
    List<double[]> plan =
        List.of(
            Shapes.at(0, 0),
            Shapes.at(half, 0),
            Shapes.at(run, run - half),
            Shapes.at(run, run),
            Shapes.at(run - half, run),
            Shapes.at(0, half));
    return Shapes.upward(plan, List.of(), yard.bottom(), yard.top);
  }

  /**
   * @param way 1 where the hip lies at the right of the field, −1 at its left
   */
  private static Truth.Field side(
      Yard yard, String key, Xyz fall, int way, double run, double half) {
    Plot plot = yard.plot(key, 0, 0, fall);
    DoubleUnaryOperator high = u -> way * u > 0 ? way * u + half : 0;
    int along = 3 + yard.random.nextInt(4);
    int jacks = (int) ((run - SHORTEST - half - yard.w) / yard.spacing);
    for (int i = -along; i <= jacks; i++) {
      int place = way > 0 ? i : jacks - along - i;
      double u = way * (place * yard.spacing + yard.spacing / 2) - (way > 0 ? 0 : yard.w);
      plot.joist("j" + place, u, high, Plot.at(run));
    }
    double end = -(along - 0.5) * yard.spacing;
    double from = way > 0 ? end : -run;
    double to = way > 0 ? run : -end;
    plot.ledger(way > 0 ? end : yard.w, way > 0 ? 0 : -end);
    plot.rim(run, way > 0 ? from : from - yard.w, to);
    plot.posts("post", run + yard.w / 2, from, to, yard.bottom());
    plot.wall(way > 0 ? from - 1500 : yard.w, way > 0 ? -yard.w : to + 1500);
    return plot.field(plot.bays(high, Plot.at(run)));
  }
}
