package org.underlee.drainage.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.units.Flows;
import org.underlee.units.Lengths;

class GutterFlowTest {
  private static final double IN = Lengths.INCH;
  private static final double FT = Lengths.FOOT;

  /** A box of 5 in with an open far end; its depth does not matter. */
  private static GutterRun run(double feet, double gpm, double fall, double n) {
    double length = feet * FT;
    return new GutterRun(
        length,
        Trough.box(5 * IN, 5 * IN),
        fall,
        n,
        List.of(new Inflow(0, length, gpm * Flows.GPM)),
        List.of(Outlet.openEnd(length)));
  }

  /** Novak et al., Hydraulic Structures, eq. 4.29 (closed form), and cases worked from it. */
  @ParameterizedTest
  @CsvSource({
    "20,31.2,0,0,1.1434,1.9804",
    "20,31.2,0,0.011,1.1434,2.1150",
    "20,31.2,0.005208333,0.011,1.1434,1.5353",
    "40,62.4,0,0.011,1.8150,3.4369",
    "16,15.96,0,0.011,0.7313,1.3658"
  })
  void theDepthsOfPublishedBoxGuttersAgree(
      double feet, double gpm, double fall, double n, double critical, double deepest) {
    FlowProfile profile = GutterFlow.solve(run(feet, gpm, fall, n));
    var stations = profile.stations();
    double outlet = stations.get(stations.size() - 1).depth();
    assertThat(outlet / IN).isCloseTo(critical, Percentage.withPercentage(0.1));
    assertThat(profile.deepest().depth() / IN).isCloseTo(deepest, Percentage.withPercentage(0.1));
  }

  /** Novak et al., Hydraulic Structures, eq. 4.29, from equal force at every place: (x/L)². */
  @Test
  void theWholeProfileOfALevelGutterWithoutFrictionIsTheClosedForm() {
    FlowProfile profile = GutterFlow.solve(run(20, 31.2, 0, 0));
    double critical = 1.1433993 * IN;
    for (FlowProfile.Station s : profile.stations()) {
      double y = s.depth() / critical;
      assertThat(y * (1.5 - 0.5 * y * y)).isCloseTo(Math.pow(s.at() / (20 * FT), 2), within(1e-4));
    }
  }

  /** Novak et al., Hydraulic Structures: control at 8q²/(gB²S³) without friction. */
  @Test
  void theControlOfASteepGutterMovesInsideToWhereTheFormulaSays() {
    GutterRun steep = run(20, 31.2, 1 / 48.0, 0);
    double q = 31.2 * Flows.GPM / (20 * FT);
    double control = 8 * q * q / (9.80665 * Math.pow(5 * IN, 2) * Math.pow(1 / 48.0, 3));
    assertThat(control).isBetween(0.0, 20 * FT);
    Momentum momentum = new Momentum(steep.section(), 0);
    double found = 0;
    for (FlowProfile.Station s : GutterFlow.solve(steep, 1600).stations()) {
      if (s.depth() > momentum.criticalDepth(s.flow()) * (1 + 1e-6)) {
        found = s.at();
      }
    }
    assertThat(found).isCloseTo(control, within(0.05));
  }

  /** The depth below a control is the fast one, and a drowned outlet throws it back by a jump. */
  @Test
  void aHighHeadAtTheOutletOfASteepGutterMakesAJump() {
    GutterRun open = run(20, 31.2, 1 / 24.0, 0.011);
    GutterRun drowned =
        new GutterRun(
            open.length(),
            open.section(),
            open.fall(),
            open.roughness(),
            open.inflows(),
            List.of(Outlet.hole(open.length(), new Opening.Round(2 * IN))));
    FlowProfile free = GutterFlow.solve(open);
    FlowProfile held = GutterFlow.solve(drowned);
    double critical = new Momentum(open.section(), 0.011).criticalDepth(open.inflow());
    assertThat(free.stations().get(free.stations().size() - 1).depth()).isLessThan(critical);
    assertThat(held.stations().get(held.stations().size() - 1).depth())
        .isCloseTo(Outlets.head(new Opening.Round(2 * IN), open.inflow()), within(1e-12));
    assertThat(held.stations().get(40).depth())
        .isCloseTo(free.stations().get(40).depth(), within(1e-9));
  }

  @Test
  void tenTimesFinerStepsChangeNothingThatMatters() {
    Random random = new Random(6);
    for (int i = 0; i < 40; i++) {
      GutterRun run = any(random, 1);
      double coarse = GutterFlow.solve(run).deepest().depth();
      double fine = GutterFlow.solve(run, 1600).deepest().depth();
      assertThat(coarse).as(run.toString()).isCloseTo(fine, Percentage.withPercentage(0.1));
    }
  }

  @Test
  void whatComesInGoesOut() {
    Random random = new Random(7);
    for (int i = 0; i < 12; i++) {
      GutterRun run = any(random, 1 + random.nextInt(3));
      double out =
          GutterFlow.solve(run).outflows().stream().mapToDouble(FlowProfile.Outflow::total).sum();
      assertThat(out).isCloseTo(run.inflow(), within(1e-9 * run.inflow()));
    }
  }

  @Test
  void moreRainIsNeverShallower() {
    Random random = new Random(8);
    for (int i = 0; i < 12; i++) {
      GutterRun run = any(random, 1 + random.nextInt(2));
      double less = GutterFlow.solve(run).deepest().depth();
      double more = GutterFlow.solve(run.scaled(1.2)).deepest().depth();
      assertThat(more).as(run.toString()).isGreaterThan(less);
    }
  }

  @Test
  void aGutterSeenFromItsOtherEndHasTheSameWater() {
    Random random = new Random(9);
    for (int i = 0; i < 12; i++) {
      GutterRun run = any(random, 1 + random.nextInt(3));
      double there = GutterFlow.solve(run).deepest().depth();
      double back = GutterFlow.solve(reversed(run)).deepest().depth();
      assertThat(back).as(run.toString()).isCloseTo(there, Percentage.withPercentage(0.1));
    }
  }

  @Test
  void twoEqualOutletsOfALevelGutterShareEvenly() {
    GutterRun one = run(40, 40, 0, 0.012);
    Opening hole = new Opening.Round(3 * IN);
    GutterRun two =
        new GutterRun(
            one.length(),
            one.section(),
            0,
            0.012,
            one.inflows(),
            List.of(Outlet.hole(0, hole), Outlet.hole(one.length(), hole)));
    List<FlowProfile.Outflow> out = GutterFlow.solve(two).outflows();
    assertThat(out.get(0).total()).isCloseTo(out.get(1).total(), Percentage.withPercentage(1e-4));
  }

  @Test
  void theSurfaceIsOneWhereTheWatersPart() {
    Random random = new Random(10);
    int parted = 0;
    for (int i = 0; i < 12; i++) {
      FlowProfile profile = GutterFlow.solve(any(random, 2));
      List<FlowProfile.Station> s = profile.stations();
      for (int k = 1; k < s.size(); k++) {
        boolean same = Math.abs(s.get(k).at() - s.get(k - 1).at()) < 1e-12;
        if (same && s.get(k - 1).flow() == 0 && s.get(k).flow() == 0) {
          parted++;
          assertThat(s.get(k).depth()).isCloseTo(s.get(k - 1).depth(), within(1e-4));
        }
      }
    }
    assertThat(parted).isGreaterThan(3);
  }

  @Test
  void aBlockedOutletMakesTheWaterDeeper() {
    GutterRun two = any(new Random(12), 2);
    assertThat(GutterFlow.solve(two.blocked(0)).deepest().depth())
        .isGreaterThan(GutterFlow.solve(two).deepest().depth());
  }

  @Test
  void aGutterWithoutOutletIsRefused() {
    GutterRun run = run(20, 10, 0, 0.012);
    assertThatThrownBy(() -> new GutterRun(6, run.section(), 0, 0.012, run.inflows(), List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no outlet");
  }

  /** The best of sixty, so that a busy machine does not decide. */
  @Test
  void twoHundredBaysTakeMilliseconds() {
    double length = 200 * 16 * IN;
    List<Inflow> drips = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      drips.add(new Inflow(i * 16 * IN, (i * 16 + 14.5) * IN, 0.3 * Flows.GPM));
    }
    GutterRun run =
        new GutterRun(
            length,
            Trough.box(6 * IN, 4 * IN),
            1 / 192.0,
            0.012,
            drips,
            List.of(Outlet.hole(length, new Opening.Round(4 * IN))));
    double each = Double.MAX_VALUE;
    for (int i = 0; i < 60; i++) {
      long start = System.nanoTime();
      GutterFlow.solve(run);
      each = Math.min(each, (System.nanoTime() - start) / 1e6);
    }
    assertThat(each).as("milliseconds for one").isLessThan(20);
  }

  static GutterRun any(Random random, int outlets) {
    double length = 2 + 10 * random.nextDouble();
    GutterSection section =
        random.nextBoolean()
            ? new HalfRound(0.1 + 0.1 * random.nextDouble())
            : new Trough(0.1, 0.1 + 0.05 * random.nextDouble(), 0.09);
    double fall = random.nextInt(3) == 0 ? 0 : 0.015 * random.nextDouble();
    List<Inflow> in = new ArrayList<>();
    for (double x = 0; x + 0.4 < length; x += 0.41) {
      in.add(new Inflow(x, x + 0.37, 1e-4 * random.nextDouble()));
    }
    List<Outlet> out = new ArrayList<>();
    for (int i = 0; i < outlets; i++) {
      double at = length * (i + (outlets == 1 ? 1 : 0.05 + 0.9 * random.nextDouble())) / outlets;
      out.add(Outlet.hole(at, new Opening.Round(0.05 + 0.05 * random.nextDouble())));
    }
    return new GutterRun(length, section, fall, 0.012, in, out);
  }

  private static GutterRun reversed(GutterRun run) {
    double length = run.length();
    List<Inflow> in =
        run.inflows().stream()
            .map(i -> new Inflow(length - i.to(), length - i.from(), i.flow()))
            .toList();
    List<Outlet> out =
        new ArrayList<>(
            run.outlets().stream()
                .map(o -> new Outlet(length - o.at(), o.opening(), o.share()))
                .toList());
    Collections.reverse(out);
    return new GutterRun(length, run.section(), -run.fall(), run.roughness(), in, out);
  }
}
