package org.underlee.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Interval;

/** The nearest free place on a line, against looking at every end of every stretch. */
class TakenTest {
  private static final int ROUNDS = 2000;
  private static final Interval ALLOWED = new Interval(1, 9);

  /** Every end and the place itself, whatever is far off. */
  private static double slowly(List<Interval> taken, double place) {
    List<Double> choices = new ArrayList<>(List.of(place));
    taken.forEach(t -> choices.addAll(List.of(t.from(), t.to())));
    return choices.stream()
        .filter(ALLOWED::contains)
        .filter(c -> taken.stream().noneMatch(t -> c > t.from() && c < t.to()))
        .min(Comparator.comparingDouble((Double c) -> Math.abs(c - place)).thenComparing(c -> c))
        .orElse(place);
  }

  @Test
  void theNearestFreePlaceIsTheOneThatLookingAtAllFinds() {
    Random random = new Random(5);
    int moved = 0;
    for (int round = 0; round < ROUNDS; round++) {
      Taken taken = new Taken();
      List<Interval> all = new ArrayList<>();
      for (int n = random.nextInt(12); n > 0; n--) {
        // whole halves, so that stretches touch and places fall on ends
        double from = random.nextInt(20) / 2.0;
        Interval stretch = new Interval(from, from + (1 + random.nextInt(5)) / 2.0);
        all.add(stretch);
        taken.add(stretch);
        double place = random.nextInt(41) / 4.0;
        double found = taken.nearestFree(place, ALLOWED::contains);
        assertThat(found).as("round %s, %s in %s", round, place, all).isEqualTo(slowly(all, place));
        moved += found == place ? 0 : 1;
      }
    }
    assertThat(moved).isGreaterThan(ROUNDS);
  }
}
