package org.underlee.drainage.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.units.Flows;
import org.underlee.units.Lengths;

/** What the methods say of one gutter, its outlets and what stands in it when it is blocked. */
class RaterTest {
  private static final double IN = Lengths.INCH;
  private static final double FT = Lengths.FOOT;
  private static final Rater RATER = new Rater(CapacityData.builtIn(), 0.5 * IN);

  @Test
  void everyMethodIsShownAndTheTightestAcceptedOneGoverns() {
    double length = 20 * FT;
    GutterRun run =
        new GutterRun(
            length,
            new HalfRound(5 * IN),
            1 / 192.0,
            0.012,
            List.of(new Inflow(0, length, 10 * Flows.GPM)),
            List.of(Outlet.hole(length, new Opening.Round(3 * IN))));
    FlowResult result = RATER.rate(run, Downspout.called(new Opening.Round(3 * IN)));
    assertThat(result.ratings())
        .extracting(r -> r.capacity().id())
        .contains(
            "flow-solution",
            "en-12056-3-gutter",
            "beij-1934",
            "manning-bank-full",
            "ipc-2012-semicircular",
            "hec-22-outlet",
            "wyly-eaton",
            "nspc-2006-leader",
            "ipc-2021-leader");
    // the old table: 1250 / 96.25 = 12.99 gpm
    assertThat(result.governing().capacity().id()).isEqualTo("ipc-2012-semicircular");
    assertThat(result.governing().use()).isCloseTo(10 * 96.25 / 1250, within(1e-9));
  }

  @Test
  void theFlowSolutionsCapacityLeavesJustTheFreeboard() {
    double length = 20 * FT;
    GutterRun run =
        new GutterRun(
            length,
            Trough.box(5 * IN, 3.5 * IN),
            0,
            0.012,
            List.of(new Inflow(0, length, 10 * Flows.GPM)),
            List.of(Outlet.openEnd(length)));
    double capacity =
        RATER.rate(run, Downspout.called(new Opening.Round(3 * IN))).ratings().stream()
            .filter(r -> r.capacity().id().equals("flow-solution"))
            .findFirst()
            .orElseThrow()
            .capacity()
            .flow();
    double deepest = GutterFlow.solve(run.scaled(capacity / run.inflow())).deepest().depth();
    assertThat(deepest / IN).isCloseTo(3.0, within(0.001));
  }

  /** A level box holds its area times its length; a sloped one less. */
  @Test
  void aBlockedGutterHoldsAPoolToItsLowestRim() {
    GutterRun level =
        new GutterRun(6, Trough.box(0.1, 0.08), 0, 0.012, List.of(), List.of(Outlet.openEnd(6)));
    assertThat(BlockedPool.of(level).kilograms()).isCloseTo(48, within(1e-9));
    GutterRun sloped =
        new GutterRun(6, level.section(), 0.01, 0.012, List.of(), List.of(Outlet.openEnd(6)));
    BlockedPool pool = BlockedPool.of(sloped);
    assertThat(pool.spillsAt()).isEqualTo(6);
    assertThat(pool.kilograms()).isCloseTo(1000 * 0.1 * (0.08 + 0.02) / 2 * 6, within(1e-9));
    BlockedPool lower = BlockedPool.withOverflow(sloped, 6, 0.05);
    assertThat(lower.kilograms()).isCloseTo(1000 * 0.1 * 0.05 * 5 / 2, within(1e-9));
  }
}
