package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Vec3;

class CameraTest {
  private static final double ASPECT = 1.6;

  @Test
  void everyPointIsInThePictureAndTheOutermostNearItsBorder() {
    Random random = new Random(42);
    for (int round = 0; round < 50; round++) {
      List<Vec3> points = new ArrayList<>();
      for (int i = 0; i < 20; i++) {
        points.add(new Vec3(random.nextDouble(), 3 * random.nextDouble(), random.nextDouble()));
      }
      Vec3 from = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
      assertThat(reach(Camera.lookingFrom(from, points, ASPECT), points)).isBetween(0.9, 0.95);
      assertThat(reach(Camera.perspective(from, points, ASPECT), points)).isBetween(0.8, 0.99);
    }
  }

  @Test
  void straightDownHasYUpThePictureAndXToTheRight() {
    Scene scene = DemoDeck.scene();
    Camera plan = Camera.plan(scene, ASPECT);
    assertThat(plan.frame().x()).isEqualTo(Vec3.X);
    assertThat(plan.frame().y()).isEqualTo(Vec3.Y);
  }

  @Test
  void theViewFromBelowLooksUp() {
    Scene scene = DemoDeck.scene();
    assertThat(Camera.fromBelow(scene, ASPECT).frame().z().z()).isNegative();
    assertThat(Camera.fromAbove(scene, ASPECT).frame().z().z()).isPositive();
    assertThat(Camera.fromBelow(scene, ASPECT).frame().determinant()).isEqualTo(1, within(1e-12));
  }

  @Test
  void nothingToLookAtIsRefused() {
    assertThatThrownBy(() -> Camera.lookingFrom(Vec3.X, List.of(), ASPECT))
        .hasMessageContaining("no points");
  }

  @Test
  void aSinglePointCanBeLookedAt() {
    assertThat(Camera.perspective(Vec3.X, List.of(Vec3.Y), ASPECT).height()).isPositive();
  }

  /** The outermost place of any point, with 1 for the border of the picture. */
  private static double reach(Camera camera, List<Vec3> points) {
    double reach = 0;
    for (Vec3 point : points) {
      Vec3 p = camera.frame().toLocal(point);
      double half = camera.height() / 2 * (1 - p.z() / camera.eyeDistance());
      assertThat(half).isPositive();
      reach = Math.max(reach, Math.abs(p.y()) / half);
      reach = Math.max(reach, Math.abs(p.x()) / (half * ASPECT));
    }
    return reach;
  }
}
