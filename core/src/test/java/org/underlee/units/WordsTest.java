package org.underlee.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.units.Lengths.UnitSystem;

class WordsTest {
  @Test
  void measuresAreWrittenInTheReadersUnits() {
    Words words = Words.of("%s clear, %s at most", Quantity.length(0.4), Quantity.fall(1.0 / 96));
    assertThat(words.in(UnitSystem.METRIC)).isEqualTo("400 mm clear, 1:96 (1/8 in per ft) at most");
    assertThat(words.in(UnitSystem.IMPERIAL))
        .isEqualTo("1' 3 3/4\" clear, 1:96 (1/8 in per ft) at most");
  }

  @Test
  void aNameOutOfAModelIsNeverTakenForATemplate() {
    assertThat(Words.of("on %s: %s", "50 %s beam", 3)).hasToString("on 50 %s beam: 3");
    assertThat(Words.plain("%s")).hasToString("%s");
  }

  @Test
  void wordsHoldWordsAndTellTheirMeasuresInOrder() {
    Words all =
        Words.join(
            " and ",
            List.of(Words.of("%s", Quantity.count(2)), Words.of("%s", Quantity.length(1))));
    assertThat(all).hasToString("2 and 1000 mm");
    assertThat(all.quantities()).containsExactly(Quantity.count(2), Quantity.length(1));
  }

  @Test
  void aTemplateWithMoreOrFewerPlacesThanPartsIsRefused() {
    assertThatThrownBy(() -> Words.of("%s and %s", 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("has 2 places for 1 parts");
  }

  @Test
  void aFallThatRunsBackSaysSo() {
    assertThat(Quantity.fall(-1.0 / 192).in(UnitSystem.METRIC)).endsWith("per ft) backwards");
  }

  @Test
  void flowsAndLoadsAreConvertedExactly() {
    // 1 gpm is 231 cubic inches a minute, 0.0630902 L/s; 1 in of water weighs 5.20 psf
    assertThat(Quantity.of(Quantity.Kind.FLOW, 0.0630902e-3).in(UnitSystem.IMPERIAL))
        .isEqualTo("1.0 gpm");
    assertThat(Quantity.of(Quantity.Kind.LOAD, 25.4).in(UnitSystem.IMPERIAL)).isEqualTo("5.2 psf");
    assertThat(Quantity.of(Quantity.Kind.RAIN, 8 * 0.0254 / 3600).in(UnitSystem.IMPERIAL))
        .isEqualTo("8.0 in/h");
    assertThat(Quantity.length(0.0254).inFile()).isEqualTo(25.4, within(1e-12));
  }
}
