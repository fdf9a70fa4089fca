package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.underlee.samples.Xyz;

/** Joists of increasing length out to a straight rim on a skew. */
final class AngledEnds implements FramingCase {
  @Override
  public String name() {
    return "angled ends, the rim on a skew";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int n = 5 + random.nextInt(5);
    double slope = (random.nextBoolean() ? 1 : -1) * Math.tan(Math.toRadians(yard.between(4, 38)));
    double width = (n - 1) * yard.spacing + yard.w;
    double shortest = 1200 + random.nextInt(1500);
    DoubleUnaryOperator low = u -> shortest + Math.abs(slope) * (slope > 0 ? u : width - u);
    Plot plot = yard.plot("field", 0, 0, Xyz.Y);
    for (int i = 0; i < n; i++) {
      plot.joist("j" + i, i * yard.spacing, Plot.at(0), low);
    }
    double thick = yard.w * Math.hypot(1, slope); // of the rim, along v
    List<double[]> rim =
        List.of(
            Shapes.at(0, low.applyAsDouble(0)),
            Shapes.at(width, low.applyAsDouble(width)),
            Shapes.at(width, low.applyAsDouble(width) + thick),
            Shapes.at(0, low.applyAsDouble(0) + thick));
    plot.bar("rim", "rim", rim, yard.bottom(), yard.top).lists("rims", "rim");
    plot.ledger(0, width).wall(-1500, width + 1500);
    for (double u : new double[] {200, width - 200}) {
      plot.post("post-" + u, u, low.applyAsDouble(u) + thick / 2, yard.bottom());
    }
    return yard.model(new Truth.Deck(true, List.of(plot.field(plot.bays(Plot.at(0), low)))));
  }
}
