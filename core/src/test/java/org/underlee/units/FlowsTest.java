package org.underlee.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity.Kind;

/** A US gallon is 231 in³, an inch 25.4 mm, both exactly. */
class FlowsTest {
  @Test
  void aGallonPerMinuteIsSoManyLitresPerSecond() {
    assertThat(Flows.GPM / Flows.LITRE_PER_SECOND).isCloseTo(0.0630902, within(5e-8));
  }

  @Test
  void aCubicFootPerSecondIsSoManyGallonsPerMinute() {
    assertThat(Flows.CUBIC_FOOT_PER_SECOND / Flows.GPM).isCloseTo(448.831, within(5e-4));
  }

  @Test
  void anInchPerHourOn96AndAQuarterSquareFeetIsAGallonPerMinute() {
    double flow = RainRates.INCH_PER_HOUR * 96.25 * Lengths.FOOT * Lengths.FOOT;
    assertThat(flow / Flows.GPM).isCloseTo(1, within(1e-12));
  }

  @Test
  void flowsAndRainAreWrittenInBothSystems() {
    double flow = 15.958 * Flows.GPM;
    assertThat(Quantity.of(Kind.FLOW, flow).in(UnitSystem.IMPERIAL)).isEqualTo("16.0 gpm");
    assertThat(Quantity.of(Kind.FLOW, flow).in(UnitSystem.METRIC)).isEqualTo("1.01 L/s");
    assertThat(flow / Flows.LITRE_PER_SECOND).isCloseTo(1.0068, within(5e-5));
    double rain = 8 * RainRates.INCH_PER_HOUR;
    assertThat(Quantity.of(Kind.RAIN, rain).in(UnitSystem.IMPERIAL)).isEqualTo("8.0 in/h");
    assertThat(Quantity.of(Kind.RAIN, rain).in(UnitSystem.METRIC)).isEqualTo("203 mm/h");
  }
}
