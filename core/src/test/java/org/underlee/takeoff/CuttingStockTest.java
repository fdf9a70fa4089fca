package org.underlee.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.takeoff.CuttingStock.Offer;
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
    List<Double> lengths = pieces(pieces.substring(3)).stream().map(l -> l * INCH).toList();
    Plan plan = CuttingStock.plan(lengths, List.of(192 * INCH), 0.125 * INCH);
    assertThat(plan.sticks()).hasSize(optimum);
    assertThat(plan.isProvenOptimal()).isTrue();
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
    assertThat(plan.bound()).isCloseTo(8.4, within(1e-9));
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
   * The textbook roll (Chvátal, "Linear Programming", 1983; demands as in the GAMS model library,
   * "cutstock"; the stock of 100 is from memory): the linear bound is 452.25, the optimum 453.
   */
  @Test
  void theTextbookRollIsCutFrom453() {
    Plan plan = CuttingStock.plan(pieces("45*97 36*610 31*395 14*211"), List.of(100.0), 0);
    assertThat(plan.sticks()).hasSize(453);
    assertThat(plan.isProvenOptimal()).isTrue();
  }

  /**
   * The paper mill of 5600 mm (widths and demands from memory, optimum 73 by a linear bound of
   * 72.917 and a plan).
   */
  @Test
  void thePaperMillNeeds73Rolls() {
    List<Double> lengths =
        pieces(
            "1.38*22 1.52*25 1.56*12 1.71*14 1.82*18 1.88*18 1.93*20 2.0*10 2.05*12 2.1*14 2.14*16"
                + " 2.15*18 2.2*20");
    Plan plan = CuttingStock.plan(lengths, List.of(5.6), 0);
    assertThat(plan.sticks()).hasSize(73);
    assertThat(plan.isProvenOptimal()).isTrue();
    check(plan, lengths, 0);
  }

  /** Where buying by price differs from buying by length: a long stick may cost less a metre. */
  @Test
  void pricesDecideWhatIsBoughtWhereTheyAreKnown() {
    List<Double> lengths = pieces("1.4*4");
    List<Offer> offers = List.of(new Offer(3.0, 10.0), new Offer(6.0, 25.0));
    Plan plan = CuttingStock.cheapest(lengths, offers, 0.003);
    assertThat(plan.sticks()).extracting(Stick::stockLength).containsExactly(3.0, 3.0);
    assertThat(plan.cost()).isCloseTo(20, within(1e-9));
    List<Offer> otherwise = List.of(new Offer(3.0, 10.0), new Offer(6.0, 15.0));
    Plan long6 = CuttingStock.cheapest(lengths, otherwise, 0.003);
    assertThat(long6.sticks()).extracting(Stick::stockLength).containsExactly(6.0);
  }

  /**
   * Orders of 5 to 40 sizes from 0.25 to 3.85 m, 1 to 12 of each, five lengths from 2.4 to 6 m, a
   * kerf of 3 mm: the plan meets the proven bound, but for one order in twenty at most, which is
   * then one step of 0.6 m above it and does not claim to be the least.
   */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4})
  void ordersOfManySizesAndStockLengthsMeetTheProvenBound(int group) {
    int above = 0;
    for (int i = 0; i < 20; i++) {
      Random random = new Random(group * 20L + i);
      List<Double> lengths = new ArrayList<>();
      for (int size = 5 + random.nextInt(36); size > 0; size--) {
        double length = 0.25 + random.nextInt(3600) / 1000.0;
        lengths.addAll(Collections.nCopies(1 + random.nextInt(12), length));
      }
      Plan plan = CuttingStock.plan(lengths, List.of(2.4, 3.0, 3.6, 4.8, 6.0), 0.003);
      check(plan, lengths, 0.003);
      boolean least = plan.cost() < plan.bound() + 1e-9;
      above += least ? 0 : 1;
      assertThat(plan.isProvenOptimal()).isEqualTo(least);
      assertThat(plan.cost()).isLessThanOrEqualTo(plan.bound() + 0.6 + 1e-9);
    }
    assertThat(above).as("orders above the bound").isLessThanOrEqualTo(1);
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
      assertThat(plan.bound())
          .as("%s kerf %s", lengths, kerf)
          .isCloseTo(100 * optimum, within(1e-6));
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

  /** {@code 48*4 64*1}: four of 48 and one of 64. */
  private static List<Double> pieces(String order) {
    List<Double> lengths = new ArrayList<>();
    for (String size : order.split(" ")) {
      String[] part = size.split("\\*");
      lengths.addAll(Collections.nCopies(Integer.parseInt(part[1]), Double.parseDouble(part[0])));
    }
    return lengths;
  }

  /** Every piece is cut exactly once, and every stick holds its pieces, cuts and offcut. */
  private static void check(Plan plan, List<Double> lengths, double kerf) {
    List<Double> cut = plan.sticks().stream().flatMap(s -> s.cuts().stream()).sorted().toList();
    assertThat(cut).isEqualTo(lengths.stream().sorted().toList());
    assertThat(plan.cost()).isGreaterThanOrEqualTo(plan.bound());
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
}
