package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.underlee.samples.Xyz;

/** Joists out to a rim that is bent, as one piece, or that is put together of straight pieces. */
final class CurvedRim implements FramingCase {
  private static final int FACETS = 48;

  @Override
  public String name() {
    return "curved rims, bent or in pieces";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    int n = 6 + random.nextInt(5);
    double width = (n - 1) * yard.spacing + yard.w;
    double run = 1800 + random.nextInt(1200);
    double radius = width * yard.between(0.6, 1.5);
    boolean bent = random.nextBoolean();
    int facets = bent ? FACETS : 5 + random.nextInt(4);
    List<double[]> inner = arc(width, run, radius, facets, 0);
    List<double[]> outer = arc(width, run, radius, facets, yard.w);
    DoubleUnaryOperator low = u -> on(inner, u);
    Plot plot = yard.plot("field", 0, 0, Xyz.Y);
    for (int i = 0; i < n; i++) {
      plot.joist("j" + i, i * yard.spacing, Plot.at(0), low);
    }
    rim(plot, inner, outer, bent);
    plot.ledger(0, width).wall(-1500, width + 1500);
    for (int i : new int[] {facets / 4, facets - facets / 4}) {
      double u = (inner.get(i)[0] + outer.get(i)[0]) / 2;
      double v = (inner.get(i)[1] + outer.get(i)[1]) / 2;
      plot.post("post-" + i, u, v, yard.bottom());
    }
    return yard.model(new Truth.Deck(true, List.of(plot.field(plot.bays(Plot.at(0), low)))));
  }

  /** From the left side to the right one, bulging away from the house. */
  private static List<double[]> arc(double width, double run, double radius, int facets, double w) {
    double rise = Math.sqrt(radius * radius - width * width / 4);
    double half = Math.asin(width / 2 / radius);
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i <= facets; i++) {
      double angle = -half + 2 * half * i / facets;
      points.add(
          Shapes.at(
              width / 2 + (radius + w) * StrictMath.sin(angle),
              run - rise + (radius + w) * StrictMath.cos(angle)));
    }
    return points;
  }

  private static double on(List<double[]> arc, double u) {
    for (int i = 0; i + 1 < arc.size(); i++) {
      double[] a = arc.get(i);
      double[] b = arc.get(i + 1);
      if (u <= b[0] || i + 2 == arc.size()) {
        return a[1] + (b[1] - a[1]) * (u - a[0]) / (b[0] - a[0]);
      }
    }
    throw new IllegalStateException("an arc of no facets");
  }

  private static void rim(Plot plot, List<double[]> inner, List<double[]> outer, boolean bent) {
    if (bent) {
      List<double[]> plan = new ArrayList<>(inner);
      for (int i = outer.size() - 1; i >= 0; i--) {
        plan.add(outer.get(i));
      }
      java.util.Collections.reverse(plan);
      plot.bar("rim", "rim", plan, plot.yard.bottom(), plot.yard.top).lists("rims", "rim");
      return;
    }
    for (int i = 0; i + 1 < inner.size(); i++) {
      List<double[]> plan = List.of(inner.get(i), inner.get(i + 1), outer.get(i + 1), outer.get(i));
      plot.bar("rim-" + i, "rim|none", plan, plot.yard.bottom(), plot.yard.top);
    }
    plot.supports.remove("rims"); // a piece between two joists holds none of them
  }
}
