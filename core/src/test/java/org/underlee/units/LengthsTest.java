package org.underlee.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.units.Lengths.UnitSystem;

/** Worked by hand from 1 in = 25.4 mm exactly (international inch, 1959). */
class LengthsTest {
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '|',
      value = {
        "0,0\"",
        "2.3622,7' 9\"", // 93 in
        "2.413,7' 11\"", // 95 in
        "2.3749,7' 9 1/2\"", // 93.5 in
        "0.0254,1\"",
        "0.3048,1' 0\"",
        "2.4384,8' 0\"",
        "0.0015875,1/16\"",
        "0.003175,1/8\"",
        "0.0047625,3/16\"",
        "0.00635,1/4\"",
        "0.0127,1/2\"",
        "0.0238125,15/16\"",
        "0.0269875,1 1/16\"",
        "0.18415,7 1/4\"", // the depth of a 2x8, PS 20
        "0.3032125,11 15/16\"",
        "0.3683,1' 2 1/2\"", // 14.5 in between joists at 16 in
      })
  void lengthsAreFeetInchesAndSixteenths(double metres, String text) {
    assertThat(Lengths.feetInches(metres)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '|',
      value = {
        "11.96875,1' 0\"", // 11 31/32 is half way to 12: up
        "11.968,11 15/16\"", // just under half way: down
        "11.9999,1' 0\"",
        "23.99,2' 0\"",
        "0.03124,0\"", // under half a sixteenth
        "0.03126,1/16\"",
        "3.97,4\"",
      })
  void roundingToASixteenthCarriesIntoInchesAndFeet(double inches, String text) {
    assertThat(Lengths.feetInches(inches * 0.0254)).isEqualTo(text);
  }

  @Test
  void whatIsPrintedToCutIsNoLongerThanThePieceByATenthOfAMillimetreNorShorterByAStep() {
    double tenth = 1e-4;
    double sum = 1e-9;
    java.util.Random random = new java.util.Random(41);
    int nearestIsLonger = 0;
    for (int i = 0; i < 20_000; i++) {
      double metres = 8 * random.nextDouble();
      String tape = Lengths.cut(metres, UnitSystem.IMPERIAL);
      String mm = Lengths.cut(metres, UnitSystem.METRIC);
      assertThat(metres - inches(tape) * 0.0254).isBetween(-tenth, 0.0254 / 16);
      assertThat(metres - Integer.parseInt(mm.replace(" mm", "")) / 1000.0)
          .isBetween(-sum, 0.001 + sum);
      nearestIsLonger += inches(Lengths.feetInches(metres)) * 0.0254 > metres + tenth ? 1 : 0;
    }
    assertThat(nearestIsLonger)
        .as("which rounding to the nearest would not do")
        .isGreaterThan(8000);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '|',
      value = {
        "3.0416,9' 11 3/4\",3041 mm", // 119.748 in: a twentieth of a millimetre below
        "3.0108,9' 10 1/2\",3010 mm", // 118.535 in, nearest 118 9/16
        "0.3048,1' 0\",304 mm", // on a step of inches
        "3.04155,9' 11 11/16\",3041 mm", // 119.746 in: a tenth below
        "3.042,9' 11 3/4\",3042 mm", // on a step of millimetres
        "0.0009,0\",0 mm",
      })
  void aLengthToCutIsRoundedDown(double metres, String tape, String mm) {
    assertThat(Lengths.cut(metres, UnitSystem.IMPERIAL)).isEqualTo(tape);
    assertThat(Lengths.cut(metres, UnitSystem.METRIC)).isEqualTo(mm);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '|',
      value = {"-0.0015875,-1/16\"", "-2.3749,-7' 9 1/2\"", "-0.0001,0\"", "-0.0254,-1\""})
  void aLengthBelowZeroHasItsSignOnceAndZeroHasNone(double metres, String text) {
    assertThat(Lengths.feetInches(metres)).isEqualTo(text);
  }

  @Test
  void everySixteenthOfTwoFeetReadsBackAsItself() {
    for (int sixteenths = 0; sixteenths < 24 * 16; sixteenths++) {
      String text = Lengths.feetInches(sixteenths / 16.0 * 0.0254);
      assertThat(inches(text) * 16).as(text).isEqualTo(sixteenths);
    }
  }

  /** A second way to read the text: feet, inches and a fraction, each by its own mark. */
  private static double inches(String text) {
    double sum = 0;
    for (String word : text.replace("\"", "").split(" ")) {
      if (word.endsWith("'")) {
        sum += 12 * Integer.parseInt(word.replace("'", ""));
      } else if (word.contains("/")) {
        String[] fraction = word.split("/");
        sum += Double.parseDouble(fraction[0]) / Integer.parseInt(fraction[1]);
      } else {
        sum += Integer.parseInt(word);
      }
    }
    return sum;
  }

  @ParameterizedTest
  @CsvSource({
    "2.362,2362 mm",
    "0,0 mm",
    "0.0004,0 mm",
    "0.0005,1 mm",
    "-0.0254,-25 mm",
    "-0.0004,0 mm",
    "12.3456,12346 mm"
  })
  void metricLengthsAreWholeMillimetres(double metres, String text) {
    assertThat(Lengths.format(metres, UnitSystem.METRIC)).isEqualTo(text);
  }

  @Test
  void theUnitSystemChooses() {
    assertThat(Lengths.format(0.0254, UnitSystem.METRIC)).isEqualTo("25 mm");
    assertThat(Lengths.format(0.0254, UnitSystem.IMPERIAL)).isEqualTo("1\"");
  }

  /** Derived: 1 in 12·16/k is k sixteenths of an inch per foot, so 1:192, 1:96, 1:64, 1:48 … */
  @ParameterizedTest
  @CsvSource({
    "192,1:192 (1/16 in per ft)",
    "96,1:96 (1/8 in per ft)",
    "64,1:64 (3/16 in per ft)",
    "48,1:48 (1/4 in per ft)",
    "32,1:32 (3/8 in per ft)",
    "24,1:24 (1/2 in per ft)",
    "100,1:100",
    "50,1:50",
    "66.67,1:66.7",
    "12,1:12"
  })
  void aFallIsARatioAndWhereItIsExactASlopePerFoot(double run, String text) {
    assertThat(Lengths.fall(1 / run)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({"0", "-0.0", "-0.01"})
  void noFallIsLevel(double fall) {
    assertThat(Lengths.fall(fall)).isEqualTo("level");
  }

  @Test
  void theLocaleOfTheMachinePlaysNoPart() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Lengths.fall(1 / 66.67)).isEqualTo("1:66.7");
      assertThat(Lengths.feetInches(2.3749)).isEqualTo("7' 9 1/2\"");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void aFallIsSaidInMillimetresAMetreWhereLengthsAreMetric() {
    assertThat(Lengths.fall(1 / 96.0, UnitSystem.METRIC)).isEqualTo("1:96 (10.4 mm per m)");
    assertThat(Lengths.fall(1 / 100.0, UnitSystem.METRIC)).isEqualTo("1:100 (10 mm per m)");
    assertThat(Lengths.fall(1 / 67.2, UnitSystem.METRIC)).isEqualTo("1:67.2 (14.9 mm per m)");
    assertThat(Lengths.fall(1 / 96.0, UnitSystem.IMPERIAL)).isEqualTo("1:96 (1/8 in per ft)");
    assertThat(Lengths.fall(0, UnitSystem.METRIC)).isEqualTo("level");
  }
}
