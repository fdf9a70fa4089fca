package org.underlee.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LengthTextTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "7' 9 1/2\" | 2.3749",
        "7'9-1/2\" | 2.3749",
        "7' 9\" | 2.3622",
        "7' | 2.1336",
        "7.5ft | 2.286",
        "16in | 0.4064",
        "19.2 in | 0.48768",
        "1/2\" | 0.0127",
        "9 1/4\" | 0.23495",
        "9.25\" | 0.23495",
        "400mm | 0.4",
        "40 cm | 0.4",
        "2.36 m | 2.36"
      })
  void aLengthIsReadAsPeopleWriteIt(String text, double metres) {
    assertThat(LengthText.parse(text)).isCloseTo(metres, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "-20 mm | -0.02",
        "-3/8\" | -0.009525",
        "\u221220mm | -0.02",
        "- 20 mm | -0.02",
        "2 3/8\" | 0.060325"
      })
  void aHeightMayBeBelowWhatItIsToldFrom(String text, double metres) {
    assertThat(LengthText.parseSigned(text)).isCloseTo(metres, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "-", "--20mm", "-16"})
  void aSignAloneIsNoHeight(String text) {
    assertThatThrownBy(() -> LengthText.parseSigned(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("write it like");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "16", "abc", "1/0\"", "in", "ft", "4 1/2", "-3in", "3 m 2", "1e3mm"})
  void whatIsNoLengthIsRefusedWithExamples(String text) {
    assertThatThrownBy(() -> LengthText.parse(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("write it like");
  }

  @Test
  void whatIsPrintedInFeetAndInchesIsReadBackToASixteenth() {
    Random random = new Random(16);
    for (int i = 0; i < 500; i++) {
      double metres = random.nextInt(100_000) / 16.0 * Lengths.INCH;
      assertThat(LengthText.parse(Lengths.feetInches(metres))).isCloseTo(metres, within(1e-9));
    }
  }

  /** PS 20, American Softwood Lumber Standard, dressed dry sizes (secondary print). */
  @ParameterizedTest
  @CsvSource({"2x8, 1.5, 7.25", "2x10, 1.5, 9.25", "2x12, 1.5, 11.25", "4x6, 3.5, 5.5"})
  void lumberIsDressedToItsStandardSize(String nominal, double thickness, double width) {
    DressedLumber.Size size = DressedLumber.table().size(nominal).orElseThrow();
    assertThat(size.thickness() / Lengths.INCH).isCloseTo(thickness, within(1e-12));
    assertThat(size.width() / Lengths.INCH).isCloseTo(width, within(1e-12));
  }
}
