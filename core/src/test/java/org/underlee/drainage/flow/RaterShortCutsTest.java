package org.underlee.drainage.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.units.Lengths;

/** What is told without working out every method, against working out every method. */
class RaterShortCutsTest {
  private static final int GUTTERS = 24;

  /** The flow solution's own rating is found to a ten-thousandth. */
  private static final double CLOSE = 2e-4;

  private static final Rater RATER = new Rater(CapacityData.builtIn(), 0.5 * Lengths.INCH);

  private static GutterRun gutter(Random random) {
    double length = 1 + random.nextInt(150) / 10.0;
    int bays = 1 + random.nextInt(12);
    double heavy = 1e-5 * (1 + random.nextInt(60));
    List<Inflow> inflows = new ArrayList<>();
    for (int bay = 0; bay < bays; bay++) {
      double flow = heavy * (1 + random.nextInt(3));
      inflows.add(new Inflow(length * bay / bays, length * (bay + 1) / bays, flow));
    }
    List<Outlet> outlets = new ArrayList<>();
    outlets.add(Outlet.hole(length * random.nextInt(5) / 10, pipe(random)));
    if (random.nextInt(4) == 0) {
      outlets.add(Outlet.hole(length * (6 + random.nextInt(4)) / 10, pipe(random)));
    }
    return new GutterRun(length, Trough.box(0.125, 0.09), 0, 0.012, inflows, outlets);
  }

  private static Opening pipe(Random random) {
    return new Opening.Round((2 + random.nextInt(3)) * Lengths.INCH);
  }

  @Test
  void whetherItCarriesTheRainAndWhatDecidesIsAsAllMethodsSay() {
    Random random = new Random(12);
    int carried = 0;
    for (int n = 0; n < GUTTERS; n++) {
      GutterRun run = gutter(random);
      Downspout spout = Downspout.called(pipe(random));
      List<Rating> all =
          RATER.rate(run, spout).ratings().stream().filter(r -> r.capacity().accepted()).toList();
      double use = all.stream().mapToDouble(Rating::use).max().orElseThrow();
      boolean passes = all.stream().allMatch(Rating::passes);
      if (Math.abs(use - 1) > CLOSE) {
        assertThat(RATER.carries(run, spout)).as("gutter %s", n).isEqualTo(passes);
      }
      Rating hardest = RATER.hardest(run, spout).orElseThrow();
      assertThat(hardest.use()).as("gutter %s", n).isCloseTo(use, within(CLOSE * use));
      carried += passes ? 1 : 0;
    }
    assertThat(carried).isBetween(GUTTERS / 6, GUTTERS * 5 / 6);
  }
}
