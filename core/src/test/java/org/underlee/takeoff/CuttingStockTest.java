package org.underlee.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.takeoff.CuttingStock.Plan;

class CuttingStockTest {
  private static final double INCH = 0.0254;

  /**
   * Made up for this test, each with the optimum proved by enumerating patterns: stock 192 in, kerf
   * 1/8 in. {@code 80*4} is four pieces of 80 in.
   */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "K1 48*4,2",
    "K2 64*3,2",
    "K3 47.9*12,3",
    "K4 80*4 109*2 28*4 88*3,5",
    "K5 144*12 96*4 71.5*6 45.25*8 30*5,17"
  })
  void knownCasesAreCutFromAsFewSticksAsCanBe(String pieces, int optimum) {
    List<Double> lengths = new ArrayList<>();
    for (String size : pieces.substring(3).split(" ")) {
      String[] part = size.split("\\*");
      lengths.addAll(
          Collections.nCopies(Integer.parseInt(part[1]), Double.parseDouble(part[0]) * INCH));
    }
    Plan plan = CuttingStock.plan(lengths, List.of(192 * INCH), 0.125 * INCH);
    assertThat(plan.sticks()).hasSize(optimum);
    assertThat(plan.bound()).isLessThanOrEqualTo(optimum);
    check(plan, lengths, 0.125 * INCH);
  }

  /** K1 without a kerf: four times 48 in is one stick of 192 in, with nothing left. */
  @Test
  void withoutAKerfPiecesMayFillAStickToItsEnd() {
    Plan plan = CuttingStock.plan(Collections.nCopies(4, 48 * INCH), List.of(192 * INCH), 0);
    assertThat(plan.sticks()).hasSize(1);
    assertThat(plan.sticks().get(0).offcut()).isCloseTo(0, within(1e-9));
    assertThat(plan.isProvenOptimal()).isTrue();
  }

  @Test
  void theLastCutIsFreeWhenItFallsOnTheEnd() {
    assertThat(CuttingStock.plan(List.of(3.0), List.of(3.0), 0.003).sticks()).hasSize(1);
    assertThat(CuttingStock.plan(List.of(1.4985, 1.4985), List.of(3.0), 0.003).sticks()).hasSize(1);
    assertThat(CuttingStock.plan(List.of(1.4986, 1.4985), List.of(3.0), 0.003).sticks()).hasSize(2);
  }

  @Test
  void anOffcutIsWhatIsLeftAfterTheCutThatFreesIt() {
    Stick stick = CuttingStock.plan(List.of(1.0), List.of(3.0), 0.003).sticks().get(0);
    assertThat(stick.offcut()).isCloseTo(1.997, within(1e-12));
  }

  @Test
  void eachStickIsTheShortestStockThatHoldsItsPieces() {
    Plan plan = CuttingStock.plan(List.of(2.9, 2.0, 2.9), List.of(3.0, 2.4), 0);
    assertThat(plan.sticks()).extracting(Stick::stockLength).containsExactly(3.0, 3.0, 2.4);
    assertThat(plan.bound()).isEqualTo(3);
  }

  @Test
  void nothingToCutNeedsNoStick() {
    Plan plan = CuttingStock.plan(List.of(), List.of(3.0), 0.003);
    assertThat(plan.sticks()).isEmpty();
    assertThat(plan.bound()).isZero();
  }

  @Test
  void aPieceLongerThanEveryStockIsRefusedWithBothLengths() {
    assertThatThrownBy(() -> CuttingStock.plan(List.of(3.2), List.of(2.4, 3.0), 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("3.2")
        .hasMessageContaining("3.0");
  }

  /**
   * The textbook roll (Chvátal, "Linear Programming", 1983): stock 100, 97 of 45, 610 of 36, 395 of
   * 31, 211 of 14; optimum 453, linear bound 452.25. Too large to search through: the plan must be
   * sound and its bound proven, not optimal.
   */
  @Test
  void aLargeOrderIsCutSoundlyBetweenTheBoundAndTheOptimumAndFirstFit() {
    List<Double> lengths = new ArrayList<>();
    lengths.addAll(Collections.nCopies(97, 45.0));
    lengths.addAll(Collections.nCopies(610, 36.0));
    lengths.addAll(Collections.nCopies(395, 31.0));
    lengths.addAll(Collections.nCopies(211, 14.0));
    Plan plan = CuttingStock.plan(lengths, List.of(100.0), 0);
    assertThat(plan.sticks().size()).isBetween(453, firstFit(lengths, 100, 0));
    assertThat(plan.bound()).isLessThanOrEqualTo(453);
    check(plan, lengths, 0);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void smallOrdersAreCutAsWellAsTryingEverything(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 50; i++) {
      double kerf = random.nextInt(3) * 2;
      List<Double> lengths = new ArrayList<>();
      for (int n = 1 + random.nextInt(9); n > 0; n--) {
        lengths.add(8.0 + random.nextInt(70));
      }
      Plan plan = CuttingStock.plan(lengths, List.of(100.0), kerf);
      int optimum = fewest(lengths, 0, new ArrayList<>(), kerf, lengths.size());
      assertThat(plan.sticks()).as("%s kerf %s", lengths, kerf).hasSize(optimum);
      assertThat(plan.bound()).as("%s kerf %s", lengths, kerf).isLessThanOrEqualTo(optimum);
      check(plan, lengths, kerf);
    }
  }

  @Test
  void theOrderInWhichPiecesAreWantedPlaysNoPart() {
    Random random = new Random(7);
    List<Double> lengths = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      lengths.add(0.3 + Math.round(random.nextDouble() * 2000) / 1000.0);
    }
    Plan first = CuttingStock.plan(lengths, List.of(2.4384, 3.048), 0.003);
    for (int i = 0; i < 5; i++) {
      Collections.shuffle(lengths, random);
      assertThat(CuttingStock.plan(lengths, List.of(3.048, 2.4384), 0.003)).isEqualTo(first);
    }
  }

  /** Every piece is cut exactly once, and every stick holds its pieces, cuts and offcut. */
  private static void check(Plan plan, List<Double> lengths, double kerf) {
    List<Double> cut = plan.sticks().stream().flatMap(s -> s.cuts().stream()).sorted().toList();
    assertThat(cut).isEqualTo(lengths.stream().sorted().toList());
    assertThat(plan.sticks().size()).isGreaterThanOrEqualTo(plan.bound());
    for (Stick stick : plan.sticks()) {
      double used = stick.cuts().stream().mapToDouble(c -> c + kerf).sum();
      assertThat(used).isLessThanOrEqualTo(stick.stockLength() + kerf + 1e-6);
      assertThat(stick.offcut()).isGreaterThanOrEqualTo(0);
      assertThat(stick.offcut()).isCloseTo(Math.max(0, stick.stockLength() - used), within(1e-6));
      assertThat(stick.cuts()).isSortedAccordingTo(Collections.reverseOrder());
    }
  }

  /** The obvious way: each piece into each stick begun so far, or into a new one. */
  private static int fewest(
      List<Double> lengths, int next, List<Double> room, double kerf, int best) {
    if (room.size() >= best && next < lengths.size()) {
      return best;
    }
    if (next == lengths.size()) {
      return Math.min(best, room.size());
    }
    double need = lengths.get(next) + kerf;
    int found = best;
    for (int i = 0; i < room.size(); i++) {
      if (room.get(i) >= need) {
        room.set(i, room.get(i) - need);
        found = fewest(lengths, next + 1, room, kerf, found);
        room.set(i, room.get(i) + need);
      }
    }
    room.add(100 + kerf - need);
    found = fewest(lengths, next + 1, room, kerf, found);
    room.remove(room.size() - 1);
    return found;
  }

  private static int firstFit(List<Double> lengths, double stock, double kerf) {
    double[] room = new double[lengths.size()];
    Arrays.fill(room, stock + kerf);
    int used = 0;
    for (double length : lengths.stream().sorted(Collections.reverseOrder()).toList()) {
      int i = 0;
      while (room[i] + 1e-9 < length + kerf) {
        i++;
      }
      room[i] -= length + kerf;
      used = Math.max(used, i + 1);
    }
    return used;
  }
}
