package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.geom.Box;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** The standard's extrusions are right-handed and go up: what is written must be the same solid. */
class StandardSweepTest {
  private static final Outline HOLED =
      new Outline(
          List.of(new Vec2(0, 0), new Vec2(3, 0), new Vec2(3, 1), new Vec2(0, 2)),
          List.of(List.of(new Vec2(0.5, 0.25), new Vec2(0.5, 0.75), new Vec2(1, 0.5))));

  private static Transform frame(Vec3 x, Vec3 y, Vec3 z) {
    return new Transform(new Vec3(5, -2, 1), x, y, z);
  }

  static Stream<Extrusion> everyWayRound() {
    Vec3 x = new Vec3(0.6, 0.8, 0);
    Vec3 y = new Vec3(-0.8, 0.6, 0);
    return Stream.of(new Vec3(0, 0, 2), new Vec3(0.5, -0.25, -2))
        .flatMap(
            sweep ->
                Stream.of(frame(x, y, Vec3.Z), frame(x, y, Vec3.Z.negated()))
                    .map(f -> new Extrusion(f, HOLED, sweep)));
  }

  @ParameterizedTest
  @MethodSource("everyWayRound")
  void whateverWayRoundItIsTheSolidStays(Extrusion given) {
    Extrusion written = StandardSweep.of(given);
    assertThat(written.frame().determinant()).isCloseTo(1, within(1e-12));
    assertThat(written.sweep().z()).isPositive();
    Box before = given.mesh().bounds();
    Box after = written.mesh().bounds();
    assertThat(after.min().minus(before.min()).length()).isLessThan(1e-12);
    assertThat(after.max().minus(before.max()).length()).isLessThan(1e-12);
    assertThat(written.mesh().volume()).isCloseTo(Math.abs(given.mesh().volume()), within(1e-12));
    assertThat(written.section().holes()).hasSize(1);
  }

  @Test
  void aSweepWithinItsOwnPlaneIsRefused() {
    Extrusion flat = new Extrusion(frame(Vec3.X, Vec3.Y, Vec3.Z), HOLED, new Vec3(1, 0, 0));
    assertThatThrownBy(() -> StandardSweep.of(flat))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("within its own plane");
  }

  static Stream<Transform> skewed() {
    Vec3 lean = new Vec3(0.001, 0, 1).unit();
    return Stream.of(
        frame(Vec3.X, new Vec3(0.001, 1, 0).unit(), Vec3.Z),
        frame(Vec3.X, Vec3.Y, lean),
        frame(Vec3.X, Vec3.Y, new Vec3(0, 0.001, 1).unit()));
  }

  @ParameterizedTest
  @MethodSource("skewed")
  void aFrameWhoseAxesAreNotSquareIsRefused(Transform skewed) {
    assertThatThrownBy(() -> StandardSweep.of(new Extrusion(skewed, HOLED, Vec3.Z)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("not rigid");
  }
}
