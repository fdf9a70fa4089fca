package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TransformTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void theInverseTakesEveryPointBack(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 100; i++) {
      Transform map =
          new Transform(
              vector(random, 50), vector(random, 2), vector(random, 2), vector(random, 2));
      if (Math.abs(map.determinant()) > 0.5) {
        Vec3 p = vector(random, 100);
        assertThat(map.inverse().apply(map.apply(p)).distance(p)).isLessThan(1e-9);
        assertThat(map.apply(map.inverse().apply(p)).distance(p)).isLessThan(1e-9);
        assertThat(map.inverse().determinant() * map.determinant()).isCloseTo(1, within(1e-9));
      }
    }
  }

  @Test
  void aFlatteningMapHasNoInverse() {
    Transform flat = new Transform(Vec3.ZERO, Vec3.X, Vec3.X, Vec3.Z);
    assertThatThrownBy(flat::inverse)
        .isInstanceOf(ArithmeticException.class)
        .hasMessageContaining("flattening");
  }

  @Test
  void theInnerMapGoesFirst() {
    Transform moveThenDouble = Transform.scaling(2).after(Transform.translation(new Vec3(1, 0, 0)));
    assertThat(moveThenDouble.apply(new Vec3(1, 1, 1))).isEqualTo(new Vec3(4, 2, 2));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void aFrameIsRigidRightHandedAndItsLocalPlaceIsTheInverse(long seed) {
    Random random = new Random(seed);
    Transform frame = Transform.frame(vector(random, 10), vector(random, 1), vector(random, 1));
    assertThat(frame.determinant()).isCloseTo(1, within(1e-12));
    assertThat(frame.x().dot(frame.y())).isCloseTo(0, within(1e-12));
    Vec3 p = vector(random, 10);
    assertThat(frame.toLocal(p).distance(frame.inverse().apply(p))).isLessThan(1e-12);
    assertThat(frame.directionToLocal(frame.direction(p)).distance(p)).isLessThan(1e-12);
  }

  @Test
  void parallelDirectionsMakeNoFrame() {
    assertThatThrownBy(() -> Transform.frame(Vec3.ZERO, Vec3.Z, Vec3.Z))
        .isInstanceOf(ArithmeticException.class)
        .hasMessageContaining("direction");
  }

  private static Vec3 vector(Random random, double size) {
    return new Vec3(
        (random.nextDouble() * 2 - 1) * size,
        (random.nextDouble() * 2 - 1) * size,
        (random.nextDouble() * 2 - 1) * size);
  }
}
