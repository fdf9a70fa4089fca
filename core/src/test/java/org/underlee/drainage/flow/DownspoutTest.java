package org.underlee.drainage.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.units.Flows;
import org.underlee.units.Lengths;

/** At what size tables of codes are read for a downspout. */
class DownspoutTest {
  private static final double IN = Lengths.INCH;
  private static final double WALL = ProofData.builtIn().metres(ProofData.Key.SPOUT_WALL_MM);
  private static final Rater RATER = new Rater(CapacityData.builtIn(), 0.5 * IN);

  /** Gallons a minute. */
  private static double by(String method, Downspout spout) {
    return RATER.downspout(spout).stream()
            .filter(c -> c.id().equals(method))
            .findFirst()
            .orElseThrow()
            .flow()
        / Flows.GPM;
  }

  private static Opening inside(double outside, double wall) {
    return new Opening.Round(outside - 2 * wall);
  }

  /** NSPC 2006 has 67 gpm for 3 in and 23 for 2 in, IPC 2021 92 and 30. */
  @Test
  void aTableIsReadAtTheSizeThatADownspoutIsCalledBy() {
    Downspout three = Downspout.nominal(inside(3 * IN, 0.002), 3 * IN);
    assertThat(three.sizedBy()).isEqualTo(Downspout.SizedBy.NOMINAL);
    assertThat(by("nspc-2006-leader", three)).isCloseTo(67, within(1e-9));
    assertThat(by("ipc-2021-leader", three)).isCloseTo(92, within(1e-9));
    Downspout two = Downspout.nominal(inside(3 * IN, 0.0005), 2.9 * IN);
    assertThat(by("nspc-2006-leader", two)).isCloseTo(23, within(1e-9));
  }

  /**
   * Where nobody calls it by a size, two walls of 0.032 in are allowed for: a sheet pipe of 3 in
   * outside is one of 3 in, one with walls of 2 mm is not, and no more is read into any.
   */
  @ParameterizedTest
  @CsvSource({
    "0.0008, 67",
    "0.00081, 67",
    "0.00083, 23",
    "0.002, 23", // 3 in outside
  })
  void withoutSuchASizeTheWallIsAllowedFor(double wall, double gpm) {
    Downspout spout = Downspout.clear(inside(3 * IN, wall), WALL);
    assertThat(spout.sizedBy()).isEqualTo(Downspout.SizedBy.CLEAR);
    assertThat(by("nspc-2006-leader", spout)).isCloseTo(gpm, within(1e-9));
    assertThat(WALL).isCloseTo(0.032 * IN, within(1e-12));
  }

  /** By hand: 27.8 (7/24)^(5/3) 2.937^(8/3) = 63.1 gpm for 74.6 mm clear, 66.8 for 3 in. */
  @Test
  void formulasTakeWhatIsClearWhateverItIsCalled() {
    Downspout sheet = Downspout.nominal(inside(3 * IN, 0.0008), 3 * IN);
    assertThat(by("wyly-eaton", sheet)).isCloseTo(63.1, within(0.05));
    assertThat(by("area-rule", sheet))
        .isCloseTo(12.47 * Math.PI / 4 * Math.pow(74.6 / 25.4, 2), within(0.05));
    assertThat(by("wyly-eaton", Downspout.called(new Opening.Round(3 * IN))))
        .isCloseTo(66.8, within(0.05));
  }
}
