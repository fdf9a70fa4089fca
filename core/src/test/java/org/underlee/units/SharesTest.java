package org.underlee.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SharesTest {
  private static final double EXACT = 1e-9;

  @Test
  void aShareIsRoundedToTheNearest() {
    assertThat(Shares.percent(0.8744, 0)).isEqualTo(87);
    assertThat(Shares.percent(0.8744, 1)).isCloseTo(87.4, within(EXACT));
    assertThat(Shares.percent(0, 1)).isZero();
  }

  @Test
  void whatIsShortOfTheWholeIsNeverTheWhole() {
    assertThat(Shares.percent(0.9997, 0)).isEqualTo(99);
    assertThat(Shares.percent(0.9997, 1)).isCloseTo(99.9, within(EXACT));
    assertThat(Shares.percent(0.999999, 1)).isCloseTo(99.9, within(EXACT));
  }

  @Test
  void theWholeIsTheWholeInSpiteOfRounding() {
    assertThat(Shares.percent(1, 0)).isEqualTo(100);
    assertThat(Shares.percent(1 - 1e-12, 1)).isEqualTo(100);
  }

  @Test
  void noShareIsOffByMoreThanAStep() {
    SplittableRandom random = new SplittableRandom(7);
    for (int i = 0; i < 10_000; i++) {
      double share = random.nextDouble();
      int decimals = random.nextInt(3);
      assertThat(Shares.percent(share, decimals))
          .isCloseTo(100 * share, within(Math.pow(10, -decimals)));
    }
  }

  @Test
  void aQuantityTellsOneDecimalWhereOnlyLittleIsMissing() {
    assertThat(Quantity.of(Quantity.Kind.SHARE, 0.9997).in(Lengths.UnitSystem.METRIC))
        .isEqualTo("99.9 %");
    assertThat(Quantity.of(Quantity.Kind.SHARE, 1).in(Lengths.UnitSystem.METRIC))
        .isEqualTo("100 %");
    assertThat(Quantity.of(Quantity.Kind.SHARE, 0.871).in(Lengths.UnitSystem.METRIC))
        .isEqualTo("87 %");
  }
}
