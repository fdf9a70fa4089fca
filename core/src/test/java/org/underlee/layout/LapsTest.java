package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Interval;

/** Common practice: pieces no longer than a 10 ft folding machine forms, lapped 3 in. */
class LapsTest {
  private static final double LONGEST = 3.048;
  private static final double LAP = 0.075;

  private static List<Interval> split(double length, boolean goesOn) {
    return new Laps(LONGEST, LAP).split(new Interval(0, length), goesOn);
  }

  @Test
  void aPieceOfExactlyTheLongestLengthStaysWholeWhenNothingFollows() {
    assertThat(split(LONGEST, false)).hasSize(1);
    assertThat(split(LONGEST + 0.001, false)).hasSize(2);
  }

  @Test
  void aPieceThatLapsOverTheNextIsShortEnoughToFormWithItsLap() {
    assertThat(split(LONGEST - LAP, true)).hasSize(1);
    assertThat(split(LONGEST, true)).hasSize(2);
  }

  @Test
  void piecesCoverTheStretchAndNoneIsTooLongWithItsLap() {
    Random random = new Random(11);
    for (int i = 0; i < 500; i++) {
      double length = 0.1 + 12 * random.nextDouble();
      boolean goesOn = random.nextBoolean();
      List<Interval> pieces = split(length, goesOn);
      assertThat(pieces.stream().mapToDouble(Interval::length).sum())
          .isCloseTo(length, within(1e-9));
      for (int k = 0; k < pieces.size(); k++) {
        boolean laps = goesOn || k < pieces.size() - 1;
        assertThat(pieces.get(k).length() + (laps ? LAP : 0)).isLessThan(LONGEST + 1e-6);
      }
    }
  }

  @Test
  void nothingIsCutFromAnEmptyStretch() {
    assertThat(split(0, true)).isEmpty();
  }
}
