package org.underlee.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.finding.StopSign;
import org.underlee.takeoff.CuttingStock.Offer;
import org.underlee.takeoff.CuttingStock.Plan;
import org.underlee.takeoff.CuttingStock.Saw;
import org.underlee.takeoff.Stick.Piece;

/** What an order costs at least, by formulas, held against plans that were found by trying all. */
class LeastCostTest {
  private static final double COST_UNIT = 1e-4;
  private static final int ORDERS = 250;
  private static final double COIL = 15.24;
  private static final double COIL_WIDTH = 0.61;
  private static final double GUTTER_STRIP = 0.15;

  /** Every way to put pieces on sticks, one after the other; metres, and whole pieces. */
  private static final class TryingAll {
    private static final double ROUNDING = 1e-9;

    /** Pieces side by side: as long as the longest, as wide as all with cuts between. */
    private static final class Block {
      private double length;
      private double width;
    }

    private final List<Piece> pieces;
    private final List<Offer> offers;
    private final Saw saw;
    private final List<Offer> sticks = new ArrayList<>();
    private final List<List<Block>> cut = new ArrayList<>();
    private double best = Double.MAX_VALUE;

    TryingAll(List<Piece> pieces, List<Offer> offers, Saw saw) {
      this.pieces = pieces;
      this.offers = offers;
      this.saw = saw;
    }

    double least() {
      put(0);
      return best;
    }

    private void put(int piece) {
      double cost = sticks.stream().mapToDouble(Offer::price).sum();
      if (cost >= best - ROUNDING) {
        return;
      }
      if (piece == pieces.size()) {
        best = cost;
        return;
      }
      for (int stick = 0; stick < sticks.size(); stick++) {
        for (Block block : List.copyOf(cut.get(stick))) {
          beside(piece, block, stick);
        }
        alone(piece, stick);
      }
      for (Offer offer : offers) {
        long used = sticks.stream().filter(offer::equals).count();
        if (offer.available() == 0 || used < offer.available()) {
          sticks.add(offer);
          cut.add(new ArrayList<>());
          alone(piece, sticks.size() - 1);
          sticks.remove(sticks.size() - 1);
          cut.remove(cut.size() - 1);
        }
      }
    }

    private void alone(int piece, int stick) {
      Block block = new Block();
      block.length = pieces.get(piece).length();
      block.width = pieces.get(piece).width();
      cut.get(stick).add(block);
      if (fits(stick)) {
        put(piece + 1);
      }
      cut.get(stick).remove(cut.get(stick).size() - 1);
    }

    private void beside(int piece, Block block, int stick) {
      double length = block.length;
      double width = block.width;
      block.length = Math.max(length, pieces.get(piece).length());
      block.width = width + saw.kerf() + pieces.get(piece).width();
      if (block.width <= saw.ripWidth() + ROUNDING && fits(stick)) {
        put(piece + 1);
      }
      block.length = length;
      block.width = width;
    }

    private boolean fits(int stick) {
      List<Block> blocks = cut.get(stick);
      double used = blocks.stream().mapToDouble(b -> b.length + saw.kerf()).sum() - saw.kerf();
      return used <= sticks.get(stick).length() + ROUNDING;
    }
  }

  private static CuttingOrder order(List<Piece> pieces, List<Offer> offers, Saw saw) {
    return CuttingSizes.of(pieces, offers, saw, COST_UNIT).order();
  }

  /** Sold by length or at any price, some on hand; cut across, or ripped as well. */
  @ParameterizedTest(name = "{0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void noOrderIsToldToCostMoreThanTheBestOfAllItsPlans(long seed) {
    Random random = new Random(seed);
    int proven = 0;
    for (int n = 0; n < ORDERS; n++) {
      List<Piece> pieces = new ArrayList<>();
      for (int size = 1 + random.nextInt(3); size > 0; size--) {
        Piece piece = new Piece(0.3 + random.nextInt(270) / 100.0, 0.1 + random.nextInt(4) / 10.0);
        pieces.addAll(Collections.nCopies(1 + random.nextInt(2), piece));
      }
      Saw saw = new Saw(random.nextInt(2) * 0.003, 0, random.nextInt(2) * COIL_WIDTH);
      List<Offer> offers = new ArrayList<>(List.of(new Offer(3, 1 + random.nextInt(5))));
      if (random.nextBoolean()) {
        offers.add(new Offer(2.1, 1 + random.nextInt(4)));
      }
      if (random.nextInt(4) == 0) {
        offers.add(new Offer(1.5, 0, 1));
      }
      String which = "order " + n + " " + pieces + " from " + offers + " by " + saw;
      CuttingOrder order = order(pieces, offers, saw);
      double least = new TryingAll(pieces, offers, saw).least();
      assertThat(LeastCost.of(order) * COST_UNIT).as(which).isLessThanOrEqualTo(least + 1e-9);
      Plan plan = CuttingStock.cheapest(pieces, offers, saw);
      assertThat(plan.cost()).as(which).isCloseTo(least, within(1e-9));
      assertThat(plan.isProvenOptimal()).as(which).isTrue();
      CuttingSearch.Found quick = new CuttingSearch(order, StopSign.here()).quick();
      proven += quick.cost() <= quick.bound() ? 1 : 0;
    }
    assertThat(proven).as("proven by formulas alone").isGreaterThan(ORDERS / 2);
  }

  /** The strips of a gutter below 400 bays: by length three coils, of which none holds five. */
  @Test
  void stripsLongerThanHalfACoilArePaidForByHalfCoilsAndNotByTheirLength() {
    List<Piece> strips = new ArrayList<>();
    strips.addAll(Collections.nCopies(4, new Piece(9.246, GUTTER_STRIP)));
    strips.addAll(Collections.nCopies(12, new Piece(8.8396, GUTTER_STRIP)));
    strips.addAll(Collections.nCopies(2, new Piece(8.7329, GUTTER_STRIP)));
    strips.addAll(Collections.nCopies(2, new Piece(0.227, GUTTER_STRIP)));
    strips.addAll(Collections.nCopies(16, new Piece(0.1013, GUTTER_STRIP)));
    Saw shears = new Saw(0, 0, COIL_WIDTH);
    CuttingOrder order = order(strips, List.of(new Offer(COIL, COIL)), shears);
    assertThat(LeastCost.of(order) * COST_UNIT).isCloseTo(18 / 4.0 * COIL, within(1e-6));
    CuttingSearch.Found quick = new CuttingSearch(order, StopSign.here()).quick();
    assertThat(quick.sticks()).hasSize(5);
    assertThat(quick.bound()).isEqualTo(quick.cost());
  }

  /** Eight go into a stick, and a ninth does not, whichever they are. */
  @Test
  void piecesALittleLongerThanAnEqualPartOfAStickArePaidForByTheNextGreaterPart() {
    List<Piece> pieces = new ArrayList<>(Collections.nCopies(24, new Piece(1.8442, 0)));
    pieces.addAll(Collections.nCopies(24, new Piece(1.7592, 0)));
    CuttingOrder order = order(pieces, List.of(new Offer(COIL, COIL)), new Saw(0, 0, 0));
    assertThat(LeastCost.of(order) * COST_UNIT).isCloseTo(6 * COIL, within(1e-6));
  }

  /** Of two lengths sold each is asked for itself: six of a short one, eight of a long one. */
  @Test
  void aPieceIsPaidForByTheStickThatChargesLeastForIt() {
    List<Piece> pieces = Collections.nCopies(24, new Piece(0.3623, 0));
    List<Offer> offers = List.of(new Offer(2.4384, 2.4384), new Offer(3.048, 3.048));
    CuttingOrder order = order(pieces, offers, new Saw(0, 0, 0));
    assertThat(LeastCost.of(order) * COST_UNIT).isCloseTo(24 / 8.0 * 3.048, within(1e-6));
  }
}
