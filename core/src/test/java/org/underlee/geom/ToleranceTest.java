package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ToleranceTest {
  @Test
  void nearTheOriginTheMeaningsRule() {
    Tolerance near = Tolerance.forCoordinates(0);
    assertThat(near.same()).isEqualTo(0.00005);
    assertThat(near.touch()).isEqualTo(0.006);
    assertThat(near.plyGap()).isEqualTo(0.006);
    assertThat(Tolerance.forCoordinates(1000)).isEqualTo(near);
  }

  @Test
  void farOutNoTwoPlacesAreToldApartThatADoubleCannotHold() {
    double far = 1e12;
    Tolerance tolerance = Tolerance.forCoordinates(far);
    assertThat(tolerance.same()).isGreaterThan(Math.ulp(far));
    assertThat(tolerance.touch()).isGreaterThanOrEqualTo(tolerance.same());
    assertThat(tolerance.same()).isEqualTo(far / Math.pow(2, 40));
  }

  @Test
  void aGapOfSixMillimetresIsOneLineHoweverItIsReckoned() {
    Tolerance near = Tolerance.forCoordinates(10);
    assertThat(near.areOneLine(0.844 - 0.838)).isTrue();
    assertThat(near.areOneLine(-0.006)).isTrue();
    assertThat(near.areOneLine(0.0065)).isFalse();
  }
}
