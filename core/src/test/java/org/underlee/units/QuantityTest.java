package org.underlee.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity.Kind;

/**
 * The factors are exact by definition: foot 0.3048 m, pound 0.453 592 37 kg, US gallon 231 in³, 5 K
 * for 9 degrees F (NIST Special Publication 811, appendix B, from memory).
 */
class QuantityTest {
  @ParameterizedTest(name = "{0} of {1} is {2} or {3}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "LENGTH  | 2.3622   | 2362 mm            | 7' 9\"",
        "FALL    | 0.015625 | 1:64 (3/16 in per ft) | 1:64 (3/16 in per ft)",
        "FALL    | -0.01    | 1:100 backwards    | 1:100 backwards",
        "FALL    | 0        | level              | level",
        "SHARE   | 0.256    | 26 %               | 26 %",
        "SHARE   | -0.001   | 0 %                | 0 %",
        "COUNT   | 12       | 12                 | 12",
        "FACTOR  | 0.0068   | 0.007              | 0.007",
        "AREA    | 9.290304 | 9.29 m²            | 100.0 sq ft",
        "AREA    | 0.02     | 0.02 m²            | 0.2 sq ft",
        "AREA    | 0.00064516 | 6 cm²            | 1 sq in",
        "DRIP    | 1e-6     | 3.6 litres an hour | 0.95 gallons an hour",
        "LOAD    | 48.8243  | 48.8 kg/m²         | 10.0 psf",
        "MASS    | 45.359237 | 45 kg             | 100 lb",
        "WARMING | 50       | 50 K               | 90 degrees F",
      })
  void aQuantityIsWrittenAsItsReaderKnowsIt(Kind kind, double si, String metric, String imperial) {
    Quantity quantity = Quantity.of(kind, si);
    assertThat(quantity.in(UnitSystem.METRIC)).isEqualTo(metric);
    assertThat(quantity.in(UnitSystem.IMPERIAL)).isEqualTo(imperial);
  }

  /** A least number that is shown is enough, a most is not too much, and neither is far off. */
  @Test
  void aLimitIsRoundedToTheSideThatKeepsIt() {
    Random random = new Random(7);
    for (int i = 0; i < 2000; i++) {
      double metres = random.nextDouble() * 5;
      for (UnitSystem system : UnitSystem.values()) {
        double step = system == UnitSystem.METRIC ? Lengths.MM : Lengths.INCH / 16;
        double least = LengthText.parse(Quantity.length(metres).atLeast().in(system));
        double most = LengthText.parse(Quantity.length(metres).atMost().in(system));
        assertThat(least).isBetween(metres - 1e-6 * step, metres + step);
        assertThat(most).isBetween(metres - step, metres + 1e-6 * step);
      }
    }
    assertThat(Quantity.length(0.0254).atLeast().in(UnitSystem.IMPERIAL)).isEqualTo("1\"");
    assertThat(Quantity.length(3 * 0.001).atLeast().in(UnitSystem.METRIC)).isEqualTo("3 mm");
    assertThat(Quantity.fall(1 / 67.27).atLeast().in(UnitSystem.METRIC)).isEqualTo("1:67.2");
    assertThat(Quantity.fall(1 / 67.27).atMost().in(UnitSystem.METRIC)).isEqualTo("1:67.3");
    assertThat(Quantity.fall(1.0 / 64).atLeast().in(UnitSystem.METRIC)).startsWith("1:64 ");
  }

  @ParameterizedTest(name = "{0} of {1} is {2} or {3}")
  @CsvSource({
    "LENGTH, 2.36225, 2362.3 mm, 93.00 in",
    "FACTOR, 2, 2, 2",
    "FACTOR, 1.3918015, 1.391802, 1.391802",
    "COUNT, 3, 3, 3",
    "SHARE, 0.5, 50 %, 50 %",
  })
  void inACalculationNothingIsRoundedForATape(
      Kind kind, double si, String metric, String imperial) {
    Quantity quantity = Quantity.of(kind, si);
    assertThat(quantity.exactlyIn(UnitSystem.METRIC)).isEqualTo(metric);
    assertThat(quantity.exactlyIn(UnitSystem.IMPERIAL)).isEqualTo(imperial);
  }

  @ParameterizedTest(name = "{0}: {1} is {2} {3}")
  @CsvSource({
    "LENGTH, 2.5, 2500, mm", "SHARE, 0.25, 25, %", "FLOW, 0.002, 2, L/s", "DRIP, 0.001, 3600, L/h",
    "AREA, 2, 2, m2", "LOAD, 3, 3, kg/m2", "MASS, 4, 4, kg", "WARMING, 5, 5, K",
    "FALL, 0.01, 0.01, ratio", "COUNT, 6, 6, count",
  })
  void inFilesEveryKindHasOneUnit(Kind kind, double si, double inFile, String unit) {
    assertThat(Quantity.of(kind, si).inFile()).isCloseTo(inFile, within(1e-9));
    assertThat(kind.fileUnit()).isEqualTo(unit);
  }

  @Test
  void eachFactoryGivesItsKind() {
    assertThat(Quantity.length(1)).isEqualTo(Quantity.of(Kind.LENGTH, 1));
    assertThat(Quantity.fall(1)).isEqualTo(Quantity.of(Kind.FALL, 1));
    assertThat(Quantity.count(1)).isEqualTo(Quantity.of(Kind.COUNT, 1));
    assertThat(Quantity.area(1)).isEqualTo(Quantity.of(Kind.AREA, 1));
  }

  @Test
  void fallsBesideTheUsualOnesAreWrittenAsTheyAre() {
    assertThat(Lengths.fall(1 / 66.7)).isEqualTo("1:66.7");
    assertThat(Lengths.fall(1 / 12.0)).isEqualTo("1:12");
    assertThat(Lengths.fall(1 / 192.0)).isEqualTo("1:192 (1/16 in per ft)");
    assertThat(Lengths.fall(1 / 1000.0)).isEqualTo("1:1000");
    assertThat(Lengths.fall(1 / 96.04)).isEqualTo("1:96");
    assertThat(Lengths.fall(1 / 96.06)).isEqualTo("1:96.1");
  }

  @Test
  void lengthsOfLessThanAnInchLoseNoSign() {
    assertThat(Lengths.feetInches(-0.001)).isEqualTo("-1/16\"");
    assertThat(Lengths.feetInches(-0.0001)).isEqualTo("0\"");
    assertThat(Lengths.feetInches(-Lengths.FOOT)).isEqualTo("-1' 0\"");
  }

  @ParameterizedTest
  @CsvSource({
    "8in/h, 8, in",
    "8 in/h, 8, in",
    "150 MM/h, 150, mm",
    " 1.5mm/h, 1.5, mm",
    "0.5in/h, 0.5, in",
  })
  void rainIsReadInBothSystems(String text, double number, String unit) {
    double metresPerSecond = number * (unit.equals("mm") ? 0.001 : 0.0254) / 3600;
    assertThat(RainRates.parse(text).orElseThrow()).isCloseTo(metresPerSecond, within(1e-18));
  }

  @ParameterizedTest
  @CsvSource({"0 mm/h", "-8in/h", "8", "8in", "in/h", "1e3mm/h", "8in/hour"})
  void whatIsNoRainIsNotRead(String text) {
    assertThat(RainRates.parse(text)).isEmpty();
  }

  @Test
  void everyNominalSizeOfTheTableHasItsDressedSize() {
    DressedLumber table = DressedLumber.table();
    assertThat(table.nominals()).isNotEmpty().allMatch(n -> table.size(n).isPresent());
  }
}
