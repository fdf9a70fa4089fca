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
import org.underlee.takeoff.CuttingStock.Saw;
import org.underlee.takeoff.Stick.Piece;

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
    Plan plan = CuttingStock.cheapest(wide(lengths), offers, new Saw(0.003, 0, 0));
    assertThat(plan.sticks()).extracting(Stick::stockLength).containsExactly(3.0, 3.0);
    assertThat(plan.cost()).isCloseTo(20, within(1e-9));
    List<Offer> otherwise = List.of(new Offer(3.0, 10.0), new Offer(6.0, 15.0));
    Plan long6 = CuttingStock.cheapest(wide(lengths), otherwise, new Saw(0.003, 0, 0));
    assertThat(long6.sticks()).extracting(Stick::stockLength).containsExactly(6.0);
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

  @Test
  void aTrimmedStickHasLessRoomButAPieceThatNeedsItAllTakesItWhole() {
    List<Offer> offers = List.of(new Offer(3.0, 3.0));
    Saw trimmed = new Saw(0, 0.01, 0);
    assertThat(CuttingStock.cheapest(wide(List.of(1.5, 1.48)), offers, trimmed).sticks())
        .hasSize(1);
    assertThat(CuttingStock.cheapest(wide(List.of(1.5, 1.49)), offers, trimmed).sticks())
        .hasSize(2);
    Plan whole = CuttingStock.cheapest(wide(List.of(2.99, 1.0)), offers, trimmed);
    assertThat(whole.sticks()).hasSize(2);
    assertThat(whole.isProvenOptimal()).isTrue();
  }

  /** By hand: 0.30 and 0.29 with a saw cut fit side by side into 0.61, 0.31 and 0.30 do not. */
  @Test
  void piecesAreRippedSideBySideWhereTheSheetIsWideEnough() {
    List<Offer> offers = List.of(new Offer(2.0, 2.0));
    Saw saw = new Saw(0.003, 0, 0.61);
    List<Piece> fit = List.of(new Piece(2.0, 0.30), new Piece(1.9, 0.29));
    Plan one = CuttingStock.cheapest(fit, offers, saw);
    assertThat(one.sticks()).hasSize(1);
    assertThat(one.sticks().get(0).blocks()).hasSize(1);
    assertThat(one.sticks().get(0).blocks().get(0).pieces()).containsExactlyElementsOf(fit);
    List<Piece> wider = List.of(new Piece(2.0, 0.31), new Piece(1.9, 0.298));
    assertThat(CuttingStock.cheapest(wider, offers, saw).sticks()).hasSize(2);
    assertThat(CuttingStock.cheapest(fit, offers, new Saw(0.003, 0, 0)).sticks()).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(longs = {5, 6})
  void smallOrdersAreRippedAsWellAsTryingEverything(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 40; i++) {
      List<Piece> pieces = new ArrayList<>();
      for (int n = 1 + random.nextInt(6); n > 0; n--) {
        pieces.add(new Piece(20.0 + random.nextInt(60), 10.0 + random.nextInt(50)));
      }
      Plan plan = CuttingStock.cheapest(pieces, List.of(new Offer(100, 100)), new Saw(2, 0, 61));
      assertThat(plan.sticks()).as("%s", pieces).hasSize(fewestRipped(pieces, 0, List.of()));
      assertThat(plan.isProvenOptimal()).as("%s", pieces).isTrue();
      assertThat(
              plan.sticks().stream()
                  .flatMap(s -> s.blocks().stream())
                  .flatMap(b -> b.pieces().stream()))
          .containsExactlyInAnyOrderElementsOf(pieces);
    }
  }

  /** Each piece beside those of each block begun so far, or in a new one; then the sticks. */
  private static int fewestRipped(List<Piece> pieces, int next, List<List<Piece>> blocks) {
    if (next == pieces.size()) {
      List<Double> lengths =
          blocks.stream()
              .map(b -> b.stream().mapToDouble(Piece::length).max().orElseThrow())
              .toList();
      return fewest(lengths, 0, new ArrayList<>(), 2, lengths.size());
    }
    Piece piece = pieces.get(next);
    int best = Integer.MAX_VALUE;
    for (int i = 0; i <= blocks.size(); i++) {
      List<List<Piece>> more = new ArrayList<>(blocks);
      List<Piece> block = new ArrayList<>(i < blocks.size() ? blocks.get(i) : List.of());
      block.add(piece);
      if (block.stream().mapToDouble(p -> p.width() + 2).sum() <= 61 + 2) {
        if (i < blocks.size()) {
          more.set(i, block);
        } else {
          more.add(block);
        }
        best = Math.min(best, fewestRipped(pieces, next + 1, more));
      }
    }
    return best;
  }

  @ParameterizedTest
  @ValueSource(longs = {8, 9})
  void whatIsOnHandIsUsedAsWellAsTryingEverything(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 40; i++) {
      List<Double> lengths = new ArrayList<>();
      for (int n = 1 + random.nextInt(8); n > 0; n--) {
        lengths.add(8.0 + random.nextInt(70));
      }
      double own = 30 + random.nextInt(80);
      Plan plan =
          CuttingStock.cheapest(
              wide(lengths), List.of(new Offer(100, 100), new Offer(own, 0, 1)), new Saw(2, 0, 0));
      int optimum = fewestBeside(lengths, own);
      assertThat(plan.cost())
          .as("%s with %s", lengths, own)
          .isCloseTo(100.0 * optimum, within(1e-6));
      assertThat(plan.isProvenOptimal()).as("%s with %s", lengths, own).isTrue();
      assertThat(plan.sticks()).filteredOn(Stick::onHand).hasSizeLessThanOrEqualTo(1);
      assertThat(plan.sticks().stream().flatMap(s -> s.cuts().stream()))
          .containsExactlyInAnyOrderElementsOf(lengths);
    }
  }

  /** Every choice of pieces for the one stick on hand; the rest in the obvious way. */
  private static int fewestBeside(List<Double> lengths, double own) {
    int best = Integer.MAX_VALUE;
    for (int chosen = 0; chosen < 1 << lengths.size(); chosen++) {
      double used = 0;
      List<Double> rest = new ArrayList<>();
      for (int i = 0; i < lengths.size(); i++) {
        if ((chosen >> i & 1) == 1) {
          used += lengths.get(i) + 2;
        } else {
          rest.add(lengths.get(i));
        }
      }
      if (used <= own + 2) {
        best = Math.min(best, fewest(rest, 0, new ArrayList<>(), 2, rest.size()));
      }
    }
    return best;
  }

  private static List<Piece> wide(List<Double> lengths) {
    return lengths.stream().map(l -> new Piece(l, 0)).toList();
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
