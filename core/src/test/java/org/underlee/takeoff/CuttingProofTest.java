package org.underlee.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.underlee.finding.StopSign;
import org.underlee.takeoff.CuttingStock.Offer;
import org.underlee.takeoff.CuttingStock.Plan;
import org.underlee.takeoff.CuttingStock.Saw;
import org.underlee.takeoff.Stick.Piece;

/**
 * Orders of 5 to 40 sizes from 0.25 to 3.85 m, 1 to 12 of each, five lengths from 2.4 to 6 m, a
 * kerf of 3 mm: every plan is proven to be the least.
 */
class CuttingProofTest {
  /** {@code -Dunderlee.cutting.jobs=500} for the published figure. */
  private static final int JOBS = Integer.getInteger("underlee.cutting.jobs", 25);

  private static final int QUICK = 40;

  private static final List<Double> STOCK = List.of(2.4, 3.0, 3.6, 4.8, 6.0);
  private static final double KERF = 0.003;

  private static List<Double> order(long seed) {
    Random random = new Random(seed);
    List<Double> lengths = new ArrayList<>();
    for (int size = 5 + random.nextInt(36); size > 0; size--) {
      double length = 0.25 + random.nextInt(3600) / 1000.0;
      lengths.addAll(Collections.nCopies(1 + random.nextInt(12), length));
    }
    return lengths;
  }

  private static double firstFit(List<Double> lengths) {
    List<Piece> pieces = lengths.stream().map(l -> new Piece(l, 0)).toList();
    List<Offer> offers = STOCK.stream().map(s -> new Offer(s, s)).toList();
    CuttingOrder order = CuttingSizes.of(pieces, offers, new Saw(KERF, 0, 0), 1e-4).order();
    return FirstFit.of(order, order.wantedRows()).stream().mapToLong(order::cost).sum() * 1e-4;
  }

  /**
   * A published case that may not be copied here: {@code -Dunderlee.cutting.case=FILE} (how many
   * pieces, the length of the stock, then each piece, as BPPLib has them) and {@code
   * -Dunderlee.cutting.optimum=N}.
   */
  @Test
  void aPublishedCaseIsCutAtItsKnownOptimum() throws IOException {
    String file = System.getProperty("underlee.cutting.case", "");
    assumeFalse(file.isEmpty(), "skipped: -Dunderlee.cutting.case=FILE names no published case");
    List<Double> numbers =
        Arrays.stream(Files.readString(Path.of(file)).trim().split("\\s+"))
            .map(Double::valueOf)
            .toList();
    List<Double> lengths = numbers.subList(2, numbers.size());
    assertThat(lengths).hasSize(numbers.get(0).intValue());
    Plan plan = CuttingStock.plan(lengths, List.of(numbers.get(1)), 0);
    assertThat(plan.sticks()).hasSize(Integer.getInteger("underlee.cutting.optimum"));
    assertThat(plan.isProvenOptimal()).isTrue();
  }

  /** Ripped from a sheet too: what a person would cut costs no less than is proven by formulas. */
  @Test
  void whatFormulasProveIsNeverMoreThanTheRelaxationProves() {
    int proven = 0;
    for (int seed = 0; seed < QUICK; seed++) {
      Random random = new Random(seed);
      List<Piece> pieces = new ArrayList<>();
      for (int size = 1 + random.nextInt(4); size > 0; size--) {
        Piece piece =
            new Piece(0.3 + random.nextInt(3000) / 1000.0, 0.06 + random.nextInt(3) / 10.0);
        pieces.addAll(Collections.nCopies(1 + random.nextInt(20), piece));
      }
      Saw saw = new Saw(KERF, 0, random.nextBoolean() ? 0.61 : 0);
      List<Offer> offers = List.of(new Offer(6, 6));
      CuttingOrder order = CuttingSizes.of(pieces, offers, saw, 1e-4).order();
      CuttingSearch.Found quick = new CuttingSearch(order, StopSign.here()).quick();
      double relaxed =
          new CuttingBound(order, StopSign.here()).relax(order.wantedRows(), Set.of()).cost();
      assertThat(LeastCost.of(order)).as("seed %s", seed).isLessThanOrEqualTo(relaxed * (1 + 1e-6));
      assertThat(quick.cost())
          .as("seed %s", seed)
          .isGreaterThanOrEqualTo((long) (relaxed * (1 - 1e-6)));
      proven += quick.cost() <= quick.bound() ? 1 : 0;
    }
    assertThat(proven).isPositive();
  }

  @Test
  void everyOrderIsCutAtTheProvenLeast() {
    double first = 0;
    double least = 0;
    long slowest = 0;
    for (int seed = 0; seed < JOBS; seed++) {
      List<Double> lengths = order(seed);
      long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      Plan plan = CuttingStock.plan(lengths, STOCK, KERF);
      long after = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      slowest = Math.max(slowest, after - before);
      assertThat(plan.isProvenOptimal()).as("seed %s", seed).isTrue();
      assertThat(plan.sticks().stream().flatMap(s -> s.cuts().stream()))
          .as("seed %s", seed)
          .containsExactlyInAnyOrderElementsOf(lengths);
      double fitted = firstFit(lengths);
      assertThat(plan.cost()).as("seed %s", seed).isLessThanOrEqualTo(fitted + 1e-9);
      first += fitted;
      least += plan.cost();
    }
    assertThat(least).isLessThan(first);
    System.out.printf(
        Locale.ROOT,
        "%d orders, all proven; the slowest %.2f s of a processor; first fit buys %.2f %% more%n",
        JOBS,
        slowest / 1e9,
        100 * (first - least) / least);
  }
}
