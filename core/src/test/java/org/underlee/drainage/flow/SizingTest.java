package org.underlee.drainage.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.units.Flows;
import org.underlee.units.Lengths;

class SizingTest {
  private static final double IN = Lengths.INCH;
  private static final double FT = Lengths.FOOT;
  private static final Rater RATER = new Rater(CapacityData.builtIn(), 0.5 * IN);
  private static final Sizing SIZING = new Sizing(RATER);
  private static final Sizing.Offer OFFER =
      new Sizing.Offer(
          List.of(Trough.box(6 * IN, 4 * IN), Trough.box(5 * IN, 3.5 * IN), new HalfRound(5 * IN)),
          List.of(0.0, 1 / 192.0),
          List.of(new Opening.Round(3 * IN), new Opening.Round(2 * IN)),
          true);

  private static Sizing.Need need(double feet, double gpm, double room) {
    double length = feet * FT;
    return new Sizing.Need(length, List.of(new Inflow(0, length, gpm * Flows.GPM)), 0.012, room);
  }

  /** Tries all and keeps the least by the same order, said anew. */
  private static Sizing.Answer byHand(Sizing.Need need) {
    Sizing.Answer best = null;
    for (GutterSection gutter : OFFER.gutters()) {
      for (double fall : OFFER.falls()) {
        for (Opening spout : OFFER.downspouts()) {
          for (int outlets = 1; outlets <= 2; outlets++) {
            Sizing.Answer answer =
                SIZING.attempt(new Sizing.Choice(gutter, fall, outlets, spout), need);
            boolean fits = gutter.depth() + fall * need.length() / outlets <= need.room();
            boolean carries =
                answer.result().ratings().stream()
                    .filter(r -> r.capacity().accepted())
                    .allMatch(r -> r.demand() <= r.capacity().flow());
            if (fits && carries && (best == null || smaller(answer, best, need.length()))) {
              best = answer;
            }
          }
        }
      }
    }
    return best;
  }

  private static boolean smaller(Sizing.Answer a, Sizing.Answer b, double length) {
    double[] one = key(a.choice(), length);
    double[] two = key(b.choice(), length);
    for (int i = 0; i < one.length; i++) {
      if (Math.abs(one[i] - two[i]) > 1e-12) {
        return one[i] < two[i];
      }
    }
    return false;
  }

  private static double[] key(Sizing.Choice c, double length) {
    return new double[] {
      c.gutter().fullArea(),
      c.gutter().depth() + c.fall() * length / c.outlets(),
      c.outlets(),
      c.outlets() * c.downspout().area()
    };
  }

  @Test
  void theChoiceIsTheLeastOfAllThatPass() {
    Random random = new Random(11);
    int found = 0;
    for (int i = 0; i < 6; i++) {
      Sizing.Need need =
          need(8 + 30 * random.nextDouble(), 4 + 30 * random.nextDouble(), 0.1 + 0.1 * i);
      Sizing.Answer expected = byHand(need);
      Sizing.Answer answer = SIZING.choose(OFFER, need);
      assertThat(answer.passes()).isEqualTo(expected != null);
      if (expected != null) {
        found++;
        assertThat(answer.choice()).isEqualTo(expected.choice());
      }
    }
    assertThat(found).isPositive();
  }

  @Test
  void whenNothingPassesTheNearestSaysWhatItLacks() {
    Sizing.Answer answer = SIZING.choose(OFFER, need(40, 400, 0.2));
    assertThat(answer.passes()).isFalse();
    assertThat(answer.lacks()).anyMatch(l -> l.contains("carries") && l.contains("%"));
    Sizing.Answer low = SIZING.choose(OFFER, need(10, 5, 0.05));
    assertThat(low.lacks()).anyMatch(l -> l.contains("too high for the room"));
  }

  @Test
  void withoutAnOverflowThereAreTwoOutlets() {
    Sizing.Offer without =
        new Sizing.Offer(OFFER.gutters(), OFFER.falls(), OFFER.downspouts(), false);
    assertThat(SIZING.choose(without, need(10, 5, 0.2)).choice().outlets()).isEqualTo(2);
  }

  @Test
  void anEmptyOfferIsRefused() {
    Sizing.Offer none = new Sizing.Offer(List.of(), List.of(), List.of(), true);
    assertThatThrownBy(() -> SIZING.choose(none, need(10, 5, 0.2)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
