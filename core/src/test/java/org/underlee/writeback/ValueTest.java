package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ValueTest {
  @Test
  void aLabelIsCutToTheStandardsLengthAndEndsWithAnEllipsis() {
    assertThat(Value.label("a".repeat(255)).token()).isEqualTo("'" + "a".repeat(255) + "'");
    assertThat(Value.label("a".repeat(256)).token())
        .isEqualTo("'" + "a".repeat(254) + "\\X2\\2026\\X0\\'");
  }

  @Test
  void aLabelIsNotCutWithinACharacter() {
    String text = "a".repeat(253) + "\uD83C\uDF27" + "rain";
    assertThat(Value.label(text).token()).isEqualTo("'" + "a".repeat(253) + "\\X2\\2026\\X0\\'");
  }

  @Test
  void nothingBelowZeroIsWrittenAsZero() {
    assertThat(Value.real(-0.0)).isEqualTo(Value.real(0)).hasToString("0.");
  }

  @Test
  void noiseBelowABillionthOfAUnitIsNotWritten() {
    assertThat(ModelUnits.rounded(0.1 + 0.2)).isEqualTo(Value.real(0.3));
    assertThat(ModelUnits.rounded(2e-9)).isEqualTo(Value.real(2e-9));
  }
}
