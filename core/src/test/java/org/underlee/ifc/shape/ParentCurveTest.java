package org.underlee.ifc.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class ParentCurveTest {
  /** Found by damaging models: each place on it took 200,000 steps, and a sweep asks for many. */
  @Test
  void aSegmentThatTurnsMoreThanThreeTimesIsRefused() {
    ParentCurve wound = new ParentCurve.Bent(List.of(1000.0));
    assertThatThrownBy(() -> wound.reached(0, 1, false))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("radians");
  }

  @Test
  void aFullTurnComesBackToWhereItBegan() {
    ParentCurve circle = new ParentCurve.Bent(List.of(2 * Math.PI));
    assertThat(circle.reached(0, 1, false).place().length()).isCloseTo(0, within(1e-9));
  }
}
