package org.underlee.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NearestTest {
  @Test
  void changesAreCountedAsByTheDefinition() {
    Random random = new Random(11);
    for (int i = 0; i < 500; i++) {
      String a = word(random);
      String b = word(random);
      assertThat(Nearest.changes(a, b)).as(a + " " + b).isEqualTo(slow(a, b));
    }
    assertThat(Nearest.changes("kitten", "sitting")).isEqualTo(3); // Levenshtein's own measure
  }

  private static String word(Random random) {
    StringBuilder word = new StringBuilder();
    for (int n = random.nextInt(6); n > 0; n--) {
      word.append(List.of("a", "b", "c").get(random.nextInt(3)));
    }
    return word.toString();
  }

  private static int slow(String a, String b) {
    if (a.isEmpty() || b.isEmpty()) {
      return a.length() + b.length();
    }
    int replaced = slow(a.substring(1), b.substring(1)) + (a.charAt(0) == b.charAt(0) ? 0 : 1);
    return Math.min(replaced, 1 + Math.min(slow(a.substring(1), b), slow(a, b.substring(1))));
  }
}
