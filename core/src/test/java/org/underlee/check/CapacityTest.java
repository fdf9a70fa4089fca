package org.underlee.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.underlee.units.Lengths;

class CapacityTest {
  /** m³/s in a gallon of 231 cubic inches a minute. */
  private static final double GPM = 231 * Math.pow(Lengths.INCH, 3) / 60;

  @Test
  void beijsFormulaGivesItsPublishedExamples() {
    // 300 sq ft at 10 in/h over 20 ft with depth 0.75 of the width needs 3.607 by 2.705 in
    double flow = Capacity.beij(3.607 * Lengths.INCH, 2.705 * Lengths.INCH, 20 * Lengths.FOOT);
    assertThat(flow / GPM * 96.25).isEqualTo(3000, within(5.0));
    // 6 by 4 in over 20 ft: 107.4 gpm, where frictionless theory gives 107.5
    assertThat(Capacity.beij(6 * Lengths.INCH, 4 * Lengths.INCH, 20 * Lengths.FOOT) / GPM)
        .isEqualTo(107.4, within(0.2));
  }

  @Test
  void anOutletIsAWeirWhenShallowAndAnOrificeWhenDeep() {
    // HEC-22 coefficients 0.37 and 0.60: 3 in round at 1 in 25.2 gpm, at 3 in 53.0 gpm
    assertThat(Capacity.inlet(3 * Lengths.INCH, Lengths.INCH) / GPM).isEqualTo(25.2, within(0.1));
    assertThat(Capacity.inlet(3 * Lengths.INCH, 3 * Lengths.INCH) / GPM)
        .isEqualTo(53.0, within(0.1));
  }
}
