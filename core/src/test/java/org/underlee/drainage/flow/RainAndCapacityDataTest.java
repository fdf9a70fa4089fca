package org.underlee.drainage.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;
import org.underlee.units.RainRates;

class RainAndCapacityDataTest {
  private static final RainData RAIN = RainData.builtIn();
  private static final CapacityData DATA = CapacityData.builtIn();

  /** IPC 2018 Appendix B. */
  @Test
  void aCityThatWasReadSaysSo() {
    Storm storm = RAIN.code("Birmingham, AL", "IPC", "2018").orElseThrow();
    assertThat(storm.intensity() / RainRates.INCH_PER_HOUR).isCloseTo(3.8, within(1e-12));
    assertThat(storm.mark()).isEqualTo(Mark.SEEN);
  }

  @Test
  void aCityFromMemorySaysThatItIsFromMemory() {
    assertThat(RAIN.code("Chicago, IL", "IPC", "2018").orElseThrow().mark())
        .isEqualTo(Mark.FROM_MEMORY);
  }

  @Test
  void codesDifferForTheSameCity() {
    double ipc = RAIN.code("Phoenix, AZ", "IPC", "2018").orElseThrow().intensity();
    double upc = RAIN.code("Phoenix, AZ", "UPC", "edition not known").orElseThrow().intensity();
    assertThat(ipc).isGreaterThan(upc);
  }

  @Test
  void bothStormsAreRunAndTheHarderOneGoverns() {
    List<Storm> both = RAIN.both("Baltimore, MD", "IPC", "2018");
    assertThat(both).extracting(Storm::kind).containsExactly(Storm.Kind.SERVICE, Storm.Kind.CODE);
    assertThat(Storm.hardest(both).intensity() / RainRates.INCH_PER_HOUR)
        .isCloseTo(7.1, within(1e-12));
  }

  @Test
  void aRainTableWithAnUnknownUnitIsRefused() {
    String text =
        """
        {"schema": "underlee/rain/1", "id": "own", "storms": [
          {"place": "Here", "kind": "code", "code": "own", "edition": "1", "storm": "s",
           "intensity": 3, "unit": "cm/h", "mark": "given", "source": "me"}]}
        """;
    assertThatThrownBy(() -> RainData.read(new DataFile("own.json", text, "the rain table")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("own.json")
        .hasMessageContaining("cm/h");
  }

  @Test
  void noValueOfTheTableThatWasNotReadIsShipped() {
    assertThat(DATA.notShipped()).anyMatch(n -> n.edition().equals("2015 to 2021"));
    assertThat(DATA.tables())
        .filteredOn(t -> t.use().equals(CapacityData.SEMICIRCULAR))
        .extracting(CapacityData.Table::edition)
        .containsExactly("2012 and before");
  }

  @Test
  void aTableIsNotReadBetweenItsEntries() {
    assertThat(DATA.tabled(CapacityData.SEMICIRCULAR, 5.5 * 0.0254, 0.15 / 12))
        .singleElement()
        .satisfies(
            c ->
                assertThat(c.flow() / org.underlee.units.Flows.GPM)
                    .isCloseTo(1760 / 96.25, within(1e-9)));
    assertThat(DATA.tabled(CapacityData.SEMICIRCULAR, 0.127, 0)).isEmpty();
  }

  @Test
  void aRainIsMeantByARateOrByAPlaceOfTheTable() {
    RainData data = RainData.builtIn();
    assertThat(data.meant("8in/h").orElseThrow().intensity())
        .isCloseTo(8 * RainRates.INCH_PER_HOUR, within(1e-15));
    assertThat(data.meant("150 mm/h").orElseThrow().intensity())
        .isCloseTo(150 * RainRates.MM_PER_HOUR, within(1e-15));
    // Mobile's code rain of 4.6 in/h is less than the burst that holds for any place
    assertThat(data.meant("mobile, al").orElseThrow().intensity())
        .isCloseTo(8 * RainRates.INCH_PER_HOUR, within(1e-15));
    assertThat(data.meant("0 mm/h")).isEmpty();
    assertThat(data.meant("8")).isEmpty();
    assertThat(data.meant("Nowhere")).isEmpty();
  }
}
