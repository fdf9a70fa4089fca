package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StepRealTest {
  @ParameterizedTest
  @CsvSource({
    "0,0.",
    "-0.0,0.",
    "12.5,12.5",
    "1,1.",
    "-3,-3.",
    "100,100.",
    "0.1,0.1",
    "0.0001,0.0001",
    "0.00001,1.E-05",
    "-0.0000125,-1.25E-05",
    "1e15,1.E15",
    "123456789012345,123456789012345.",
    "1.25e20,1.25E20",
    "0.3048,0.3048",
    "2e23,2.E23",
    "4.9E-324,5.E-324",
    "1e-100,1.E-100"
  })
  void knownNumbersAreWrittenAsPartTwentyOneWantsThem(double value, String text) {
    assertThat(StepReal.format(value)).isEqualTo(text);
  }

  @Test
  void everyNumberReadsBackExactlyAndMatchesTheGrammar() {
    Random random = new Random(21);
    for (int i = 0; i < 5000; i++) {
      double value = Double.longBitsToDouble(random.nextLong());
      if (Double.isFinite(value)) {
        String text = StepReal.format(value);
        assertThat(Double.parseDouble(text)).isEqualTo(value);
        // ISO 10303-21, table 2: REAL
        assertThat(text).matches("-?[0-9]+\\.[0-9]*(E-?[0-9]+)?");
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {-300, -12, -4, 0, 3, 9, 15, 300})
  void noShorterDecimalReadsBack(int powerOfTen) {
    Random random = new Random(22L + powerOfTen);
    for (int i = 0; i < 300; i++) {
      double value = (random.nextDouble() * 2 - 1) * Math.pow(10, powerOfTen);
      // every third one is short already, as drawn lengths are
      value = i % 3 == 0 ? Math.rint(value * 1e4) / 1e4 : value;
      String digits = StepReal.format(value).replaceAll("E.*|[-.]", "").replaceAll("^0+|0+$", "");
      if (digits.length() > 1) {
        BigDecimal shorter = new BigDecimal(value).round(new MathContext(digits.length() - 1));
        assertThat(shorter.doubleValue()).isNotEqualTo(value);
      }
    }
  }

  @Test
  void theLocaleOfTheMachinePlaysNoPart() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(StepReal.format(1234.5)).isEqualTo("1234.5");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void infinityIsRefused() {
    assertThatThrownBy(() -> StepReal.format(Double.POSITIVE_INFINITY))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("Infinity");
  }
}
