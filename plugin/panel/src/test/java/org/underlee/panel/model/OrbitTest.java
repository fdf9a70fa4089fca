package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

class OrbitTest {
  private static final List<Vec3> POINTS = List.of(new Vec3(0, 0, 0), new Vec3(5, 3, 2));

  private static Vec3 placeUnder(Orbit o, double x, double y) {
    Transform f = o.camera().frame();
    return f.origin().plus(f.x().times(x * o.height())).plus(f.y().times(y * o.height()));
  }

  @Test
  void zoomingKeepsWhatIsUnderTheCursor() {
    Random random = new Random(3);
    Orbit orbit = Orbit.around(new Vec3(1, -1, 0.5), POINTS, 1.6);
    for (int i = 0; i < 200; i++) {
      double x = random.nextDouble() - 0.5;
      double y = random.nextDouble() - 0.5;
      Orbit next = orbit.zoomed(0.7 + random.nextDouble() * 0.7, x, y);
      assertThat(placeUnder(next, x, y).distance(placeUnder(orbit, x, y)))
          .isCloseTo(0, within(1e-9));
      orbit = next.turned(random.nextDouble() - 0.5, random.nextDouble() - 0.5);
    }
  }

  @Test
  void itNeverTipsOver() {
    Orbit orbit = Orbit.around(Vec3.Z, POINTS, 1.6);
    for (int i = 0; i < 40; i++) {
      orbit = orbit.turned(0.01, 0.2);
      assertThat(orbit.camera().frame().y().z()).isGreaterThanOrEqualTo(0);
    }
  }

  @Test
  void movingFollowsTheHand() {
    Orbit orbit = Orbit.around(new Vec3(0.3, -1, -0.4), POINTS, 1.6);
    Orbit moved = orbit.moved(0.25, -0.1);
    Vec3 before = orbit.camera().frame().toLocal(orbit.target());
    Vec3 after = moved.camera().frame().toLocal(orbit.target());
    assertThat(after.x() - before.x()).isCloseTo(0.25 * orbit.height(), within(1e-9));
    assertThat(after.y() - before.y()).isCloseTo(0.1 * orbit.height(), within(1e-9));
  }
}
