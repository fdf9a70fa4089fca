package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/** Joists that splay from a straight ledger to a straight rim, by up to 7° each way. */
final class Fans implements FramingCase {
  private static final double WIDEST = 900;

  @Override
  public String name() {
    return "splayed and fanned joists";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int n = 5 + random.nextInt(5);
    double run = 2200 + random.nextInt(1500);
    double middle = (n - 1) * yard.spacing / 2;
    // the outer joists lean by this much over the run
    double most = Math.tan(Math.toRadians(yard.between(1, 7))) * run;
    double open = Math.min(most / middle, WIDEST / yard.spacing - 1);
    boolean inward = random.nextInt(4) == 0;
    double k = inward ? -Math.min(open, 0.3) : open;
    Plot plot = yard.plot("field", 0, 0, Xyz.Y);
    List<double[]> high = new ArrayList<>();
    List<double[]> low = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double at = i * yard.spacing;
      double end = at + k * (at - middle);
      double half = yard.w / 2 * Math.hypot(1, (end - at) / run);
      List<double[]> plan =
          List.of(
              Shapes.at(at - half, 0),
              Shapes.at(at + half, 0),
              Shapes.at(end + half, run),
              Shapes.at(end - half, run));
      String key = "j" + i;
      plot.bar(key, "joist", plan, yard.bottom(), yard.top);
      plot.counted(List.of(plot.name(key)), 1, at - half, at + half);
      high.add(new double[] {at - half, at + half});
      low.add(new double[] {end - half, end + half});
    }
    List<Truth.Bay> bays = new ArrayList<>();
    for (int i = 0; i + 1 < n; i++) {
      double[] first = {0, high.get(i + 1)[0] - high.get(i)[1]};
      double[] last = {run, low.get(i + 1)[0] - low.get(i)[1]};
      bays.add(new Truth.Bay(i, i + 1, run, List.of(first, last), List.of(), List.of(), List.of()));
    }
    plot.ledger(high.get(0)[0], high.get(n - 1)[1]).wall(-1500, 2 * middle + 1500);
    plot.rim(run, low.get(0)[0], low.get(n - 1)[1]);
    plot.posts("post", run + yard.w / 2, low.get(0)[0], low.get(n - 1)[1], yard.bottom());
    return yard.model(new Truth.Deck(true, List.of(plot.field(bays))));
  }
}
