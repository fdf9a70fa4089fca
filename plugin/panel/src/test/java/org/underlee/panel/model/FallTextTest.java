package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FallTextTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "1:96; 96",
        "1 : 64.5; 64.5",
        "1/8 in per ft; 96",
        "1/4\" per foot; 48",
        "1/8 / ft; 96",
        "1 %; 100",
        "0.5%; 200"
      })
  void aFallIsReadAsPeopleWriteIt(String text, double run) {
    assertThat(FallText.parse(text)).hasValue(run);
  }

  @ParameterizedTest
  @CsvSource({"96, 90, 102", "97, 96, 102", "95.9999999999, 90, 102", "48, 42, 54"})
  void keysGoFromOneUsualFallToTheNext(double run, double steeper, double flatter) {
    assertThat(FallText.stepped(run, true)).isEqualTo(steeper);
    assertThat(FallText.stepped(run, false)).isEqualTo(flatter);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "96", "1:0", "0 %", "steep", "1:-4", "0/8 in per ft"})
  void whatIsNoFallIsNotGuessedAt(String text) {
    assertThat(FallText.parse(text)).isEmpty();
  }
}
