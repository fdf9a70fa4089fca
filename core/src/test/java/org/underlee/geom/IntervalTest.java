package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IntervalTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "4|6|[Interval[from=0.0, to=4.0], Interval[from=6.0, to=10.0]]",
        "-1|6|[Interval[from=6.0, to=10.0]]",
        "0|6|[Interval[from=6.0, to=10.0]]",
        "4|12|[Interval[from=0.0, to=4.0]]",
        "4|10|[Interval[from=0.0, to=4.0]]",
        "0|10|[]",
        "-1|11|[]",
        "10|12|[Interval[from=0.0, to=10.0]]",
        "12|13|[Interval[from=0.0, to=10.0]]",
        "5|5|[Interval[from=0.0, to=10.0]]",
        "6|4|[Interval[from=0.0, to=10.0]]"
      })
  void takingOutLeavesNoneOneOrTwoPieces(double from, double to, String left) {
    assertThat(new Interval(0, 10).without(new Interval(from, to))).hasToString(left);
  }

  @Test
  void whatIsTakenOutAndWhatIsLeftMakeTheWhole() {
    Random random = new Random(5);
    for (int i = 0; i < 1000; i++) {
      Interval whole = interval(random);
      Interval out = interval(random);
      List<Interval> left = whole.without(out);
      double sum = left.stream().mapToDouble(Interval::length).sum();
      assertThat(sum + whole.meet(out).length()).isCloseTo(whole.length(), within(1e-12));
      assertThat(left).allMatch(l -> l.meet(out).isEmpty());
    }
  }

  @Test
  void anIntervalThatRunsBackwardsIsEmptyAndHasNoLength() {
    assertThat(new Interval(2, 1).isEmpty()).isTrue();
    assertThat(new Interval(2, 1).length()).isZero();
    assertThat(new Interval(1, 1).isEmpty()).isTrue();
    assertThat(new Interval(1, 2).contains(1)).isTrue();
    assertThat(new Interval(1, 2).contains(2.1)).isFalse();
    assertThat(new Interval(1, 2).middle()).isEqualTo(1.5);
  }

  private static Interval interval(Random random) {
    double from = random.nextDouble() * 10;
    return new Interval(from, from + random.nextDouble() * 5);
  }
}
