package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.bay.Bay;
import org.underlee.framing.TimberDeck;
import org.underlee.kit.DrainValue;
import org.underlee.kit.KitReader;
import org.underlee.units.Lengths;

/** Figures of common practice, worked by hand. */
class LayoutCheckValuesTest {
  private static final double IN = 0.0254;
  private static final double TOLERANCE = 1e-9;

  /** 1/8 in per ft is 1.041667 % and 0.59681°: arithmetic, 1/96 and its arc tangent. */
  @Test
  void theBuiltInFallIsAnEighthOfAnInchPerFoot() {
    double fall = KitReader.builtIn().fall();
    assertThat(fall).isCloseTo(0.01041667, within(1e-8));
    assertThat(Math.toDegrees(Math.atan(fall))).isCloseTo(0.59681, within(1e-5));
  }

  /** 1/4 in per ft is 2.083333 % and 1.19349°: arithmetic, 1/48 and its arc tangent. */
  @Test
  void aQuarterOfAnInchPerFootIsReadAndToldAsItIs() {
    double fall = KitReader.builtIn().with(DrainValue.RUN_PER_FALL, 48, "test").fall();
    assertThat(fall).isCloseTo(0.02083333, within(1e-8));
    assertThat(Math.toDegrees(Math.atan(fall))).isCloseTo(1.19349, within(1e-5));
    assertThat(Lengths.fall(fall)).isEqualTo("1:48 (1/4 in per ft)");
  }

  /** Common practice: the first hanger 6 in from each end, then at most 24 in; 16 ft take 9. */
  @Test
  void aGutterOf16FeetHangsOn9HangersAt22AndAHalfInches() {
    List<Double> hangers = GutterBuilder.stations(192 * IN, 6 * IN, 24 * IN);
    assertThat(hangers).hasSize(9);
    for (int i = 0; i < 9; i++) {
      assertThat(hangers.get(i)).isCloseTo((6 + 22.5 * i) * IN, within(TOLERANCE));
    }
  }

  /**
   * Joists at 16 in o.c. from the outside face of a 16 ft rim: 13 joists; 12 bays, the outer ones
   * 13 3/4 in clear and ten of 14 1/2 in: 13 · 1.5 + 2 · 13.75 + 10 · 14.5 = 192.
   */
  @Test
  void sixteenFeetAt16InchesAreServedIn12Bays() {
    List<Double> clear =
        FieldPlanner.plan(sixteenFeet().fieldBays().get(0), KitReader.builtIn()).served().stream()
            .map(BayRun::bay)
            .map(Bay::clearWidthHigh)
            .toList();
    List<Double> expected = new ArrayList<>(Collections.nCopies(12, 14.5 * IN));
    expected.set(0, 13.75 * IN);
    expected.set(11, 13.75 * IN);
    assertThat(clear).hasSize(12);
    for (int i = 0; i < 12; i++) {
      assertThat(clear.get(i)).isCloseTo(expected.get(i), within(1e-6));
    }
  }

  private static TimberDeck sixteenFeet() {
    double thick = 1.5 * IN;
    double wide = 192 * IN;
    double top = TimberDeck.Z + TimberDeck.D;
    TimberDeck deck = new TimberDeck();
    for (int i = 0; i < 13; i++) {
      double left = i == 0 ? 0 : Math.min(15.25 + 16 * (i - 1), 190.5) * IN;
      deck = deck.bar("IfcBeam", "j" + i, left, 0, TimberDeck.Z, left + thick, TimberDeck.L, top);
    }
    return deck.bar("IfcBeam", "bar on the house", 0, -thick, TimberDeck.Z, wide, 0, top)
        .bar("IfcBeam", "rim", 0, TimberDeck.L, TimberDeck.Z, wide, TimberDeck.L + thick, top);
  }
}
