package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;
import org.underlee.samples.cases.Piece.Kind;

/** Guard posts at the rim, outside or inside of it, and stringers of a stair down from it. */
final class GuardsAndStairs implements FramingCase {
  @Override
  public String name() {
    return "guard posts, and stringers at the rim";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int n = 6 + random.nextInt(5);
    double width = (n - 1) * yard.spacing + yard.w;
    double run = 2200 + random.nextInt(1500);
    Plot plot = yard.plot("field", 0, 0, Xyz.Y);
    for (int i = 0; i < n; i++) {
      plot.line("j" + i, "joist", 1, i * yard.spacing, 0, run);
    }
    plot.ledger(0, width).rim(run, 0, width).wall(-1500, width + 1500);
    plot.posts("post", run + yard.w / 2, 0, width, yard.bottom());
    guards(plot, run, width);
    stringers(plot, run + yard.w);
    return yard.model(
        new Truth.Deck(true, List.of(plot.field(plot.bays(Plot.at(0), Plot.at(run))))));
  }

  private static void guards(Plot plot, double run, double width) {
    Yard yard = plot.yard;
    for (int i = 0; i < 3; i++) {
      double u = 700 + i * (width - 1400) / 2;
      double v = run + yard.w;
      Body body =
          Shapes.box(
              2, u - 45, v, yard.bottom() - 20, u + 45, v + 90, yard.top + yard.pick(950, 1100));
      yard.add(
          plot.name("guard-" + i), Kind.UPRIGHT, "guard-post", Yard.UPSTAIRS, body.in(plot.frame));
    }
  }

  /** Cut plumb at the rim and level at the ground, as a builder saws them. */
  private static void stringers(Plot plot, double face) {
    Yard yard = plot.yard;
    double slope = Math.tan(Math.toRadians(yard.between(28, 42)));
    double top = yard.top - 180;
    double deep = 286;
    double foot = top / slope;
    for (int i = 0; i < 2 + yard.random.nextInt(2); i++) {
      double u = 900 + i * 450;
      List<double[]> side =
          List.of(
              Shapes.at(face, top - deep),
              Shapes.at(face + foot - deep / slope, 0),
              Shapes.at(face + foot, 0),
              Shapes.at(face, top));
      Body body = Shapes.alongU(side, List.of(), u, u + yard.w);
      yard.add(
          plot.name("stringer-" + i), Kind.BAR, "stringer", Yard.UPSTAIRS, body.in(plot.frame));
    }
  }
}
