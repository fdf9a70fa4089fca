package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/** Joists that reach past one drop beam or several, of one to three plies each. */
final class Cantilevers implements FramingCase {
  @Override
  public String name() {
    return "cantilevers past one or more drop beams";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int n = 5 + random.nextInt(5);
    double width = (n - 1) * yard.spacing + yard.w;
    double run = 3200 + random.nextInt(1800);
    Plot plot = yard.plot("field", 0, 0, Xyz.Y);
    for (int i = 0; i < n; i++) {
      plot.line("j" + i, "joist", 1, i * yard.spacing, 0, run);
    }
    int beams = 1 + random.nextInt(3);
    for (int b = 0; b < beams; b++) {
      double v = run - yard.between(300, 700) - b * 1000;
      int plies = 1 + random.nextInt(3);
      double deep = yard.pick(184, 235, 286);
      for (int p = 0; p < plies; p++) {
        String ply = "beam-" + b + "-" + p;
        double at = v + p * yard.w;
        plot.box(
            ply,
            "drop-beam",
            -100,
            at,
            width + 100,
            at + yard.w,
            yard.bottom() - deep,
            yard.bottom());
        plot.lists("beams", ply);
      }
      double middle = v + plies * yard.w / 2;
      plot.posts("post-" + b, middle, -100, width + 100, yard.bottom() - deep);
    }
    plot.ledger(0, width).rim(run, 0, width).wall(-1500, width + 1500);
    return yard.model(
        new Truth.Deck(true, List.of(plot.field(plot.bays(Plot.at(0), Plot.at(run))))));
  }
}
