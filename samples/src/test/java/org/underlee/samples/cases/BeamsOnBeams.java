package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/** Joists on a beam that is itself carried: it lies on girders, or hangs between them. */
final class BeamsOnBeams implements FramingCase {
  @Override
  public String name() {
    return "joists on a beam on beams";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int n = 6 + random.nextInt(5);
    double width = (n - 1) * yard.spacing + yard.w;
    double run = 2800 + random.nextInt(1500);
    boolean lying = random.nextBoolean();
    Plot plot = yard.plot("field", 0, 0, Xyz.Y);
    for (int i = 0; i < n; i++) {
      plot.line("j" + i, "joist", 1, i * yard.spacing, 0, run);
    }
    double v = run - yard.between(300, 800);
    double deep = yard.pick(184, 235);
    double under = yard.bottom() - deep;
    // girders run out from the wall, one at each side
    double left = lying ? yard.spacing / 2 : -3 * yard.w;
    double right = width - left;
    double z = lying ? under : yard.bottom();
    String role = lying ? "drop-beam" : "flush-beam";
    for (double u : new double[] {left, right}) {
      String key = "girder-" + (u == left ? "left" : "right");
      plot.box(key, role, u - yard.w, 200, u + yard.w, run, z - 286, z);
      plot.lists("beams", key);
      for (double at : new double[] {400, run - 200}) {
        plot.post(key + "-post-" + (at == 400 ? 1 : 2), u, at, z - 286);
      }
    }
    double from = lying ? -100 : left + yard.w;
    double to = lying ? width + 100 : right - yard.w;
    plot.box("beam", "drop-beam", from, v, to, v + 2 * yard.w, under, yard.bottom());
    plot.lists("beams", "beam");
    plot.ledger(0, width).rim(run, 0, width).wall(-1500, width + 1500);
    return yard.model(
        new Truth.Deck(true, List.of(plot.field(plot.bays(Plot.at(0), Plot.at(run))))));
  }
}
