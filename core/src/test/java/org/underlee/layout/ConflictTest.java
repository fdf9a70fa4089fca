package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.Fix;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Interval;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.units.Words;

class ConflictTest {
  /** Limits stand on whole millimetres, so heights on half millimetres decide everything. */
  private static final double GRID = 0.0005;

  private static boolean leavesAHeight(List<SeatLimit> limits) {
    for (int i = -400; i <= 400; i++) {
      double height = i * GRID;
      if (limits.stream().noneMatch(l -> forbids(l, height))) {
        return true;
      }
    }
    return false;
  }

  private static boolean forbids(SeatLimit limit, double height) {
    Interval f = limit.forbidden();
    return height > f.from() + SeatRange.SAME && height < f.to() - SeatRange.SAME;
  }

  private static List<SeatLimit> random(Random random) {
    List<SeatLimit> limits = new ArrayList<>();
    limits.add(SeatLimit.atLeast(-0.001 * random.nextInt(60), "leg"));
    limits.add(SeatLimit.atLeast(-0.001 * random.nextInt(90), "beam"));
    limits.add(SeatLimit.atMost(0.001 * random.nextInt(60), "head"));
    limits.add(SeatLimit.atMost(0.001 * random.nextInt(90), "top"));
    for (int i = random.nextInt(6); i > 0; i--) {
      int from = random.nextInt(120) - 80;
      Interval bite = new Interval(0.001 * from, 0.001 * (from + 1 + random.nextInt(80)));
      limits.add(new SeatLimit(bite, Words.of("block %s", i)));
    }
    return limits;
  }

  /** The size of the smallest set of limits that leaves no height, by trying every set. */
  private static int fewest(List<SeatLimit> limits) {
    int fewest = Integer.MAX_VALUE;
    for (int set = 0; set < 1 << limits.size(); set++) {
      int chosen = set;
      if (Integer.bitCount(set) < fewest) {
        List<SeatLimit> own =
            limits.stream().filter(l -> (chosen >> limits.indexOf(l) & 1) == 1).toList();
        fewest = leavesAHeight(own) ? fewest : Integer.bitCount(set);
      }
    }
    return fewest;
  }

  @Test
  void aConflictIsTheSmallestOneAndIsThereExactlyWhenNoHeightOfAFineGridIsLeft() {
    int conflicts = 0;
    for (long seed = 1; seed <= 1000; seed++) {
      List<SeatLimit> limits = random(new Random(seed));
      Optional<Conflict> conflict = Conflict.of(limits);
      assertThat(conflict.isEmpty()).as("seed %d", seed).isEqualTo(leavesAHeight(limits));
      if (conflict.isPresent()) {
        conflicts++;
        List<SeatLimit> own = conflict.get().limits();
        assertThat(own).as("seed %d", seed).hasSize(fewest(limits));
        for (SeatLimit dropped : own) {
          assertThat(leavesAHeight(own.stream().filter(l -> l != dropped).toList()))
              .as("seed %d without %s", seed, dropped)
              .isTrue();
        }
      }
    }
    assertThat(conflicts).isBetween(100, 900);
  }

  private static final Kit STEEP =
      KitReader.builtIn().with(DrainValue.RUN_PER_FALL, 48, "1/4 in per ft");

  /** Full-depth blocking in the second bay, half a metre from the ledger. */
  private static FieldBays blocked() {
    double left = 0.4 + TimberDeck.W;
    return TimberDeck.plain(5)
        .bar("IfcBeam", "block", left, 0.5, TimberDeck.Z, 0.8, 0.538, TimberDeck.Z + TimberDeck.D)
        .fieldBays()
        .get(0);
  }

  @Test
  void theLimitsThatConflictAreNamedAndTheNearestFallIsAnActionThatServesTheBay() {
    FieldBays bays = blocked();
    Finding finding =
        FieldPlanner.plan(bays, STEEP).findings().stream()
            .filter(f -> f.rule().equals(LayoutRules.NO_SEAT))
            .findFirst()
            .orElseThrow();
    assertThat(finding.message())
        .contains("the rail leg must reach the joist", "under or over blocking at", "at most")
        .contains("without any one of them a height is left");
    Fix.Option option = finding.fix().flatMap(Fix::action).orElseThrow().options().get(0);
    assertThat(option.name()).isEqualTo("--fall");
    int run = Integer.parseInt(option.value().substring("1:".length()));
    assertThat(served(bays, run)).isEqualTo(4);
    assertThat(served(bays, run - 1)).isEqualTo(3);
  }

  @Test
  void atAGentlerFallNoBayIsLost() {
    FieldBays bays = blocked();
    int before = 0;
    for (int run = 20; run <= Unseated.FLATTEST_RUN_PER_FALL; run += 4) {
      int served = served(bays, run);
      assertThat(served).isGreaterThanOrEqualTo(before);
      before = served;
    }
    assertThat(before).isEqualTo(4);
  }

  private static int served(FieldBays bays, int runPerFall) {
    Kit kit = STEEP.with(DrainValue.RUN_PER_FALL, runPerFall, "test");
    return FieldPlanner.plan(bays, kit).served().size();
  }
}
