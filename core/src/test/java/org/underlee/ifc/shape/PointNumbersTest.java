package org.underlee.ifc.shape;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Vec3;

class PointNumbersTest {
  @Test
  void pointsAreNumberedAsAHashMapOfThemWould() {
    for (int seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      int span = 2 + random.nextInt(30);
      PointNumbers numbers = new PointNumbers();
      Map<Vec3, Integer> slow = new HashMap<>();
      for (int i = 0; i < 2000; i++) {
        Vec3 p =
            new Vec3(random.nextInt(span), random.nextInt(span) / 8.0, 0.1 * random.nextInt(span));
        Integer known = slow.putIfAbsent(p, slow.size());
        assertThat(numbers.of(p)).isEqualTo(known == null ? slow.size() - 1 : known);
        assertThat(numbers.points().get(numbers.of(p))).isEqualTo(p);
      }
      assertThat(numbers.points()).hasSize(slow.size());
    }
  }

  @Test
  void zeroAndMinusZeroAreOnePlace() {
    PointNumbers numbers = new PointNumbers();
    assertThat(numbers.of(new Vec3(0.0, -0.0, 1))).isEqualTo(numbers.of(new Vec3(-0.0, 0.0, 1)));
  }
}
