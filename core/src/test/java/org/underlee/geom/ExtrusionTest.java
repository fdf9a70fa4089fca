package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ExtrusionTest {
  /** 38 × 184 × 3000 mm: 0.038·0.184·3 = 0.020976 m³. */
  @Test
  void aStraightBarHasTheVolumeOfItsBox() {
    Extrusion bar =
        Extrusion.straight(Transform.IDENTITY, Outline.rectangle(0, 0, 0.038, 0.184), 3);
    assertThat(bar.volume()).isCloseTo(0.020976, within(1e-15));
    assertThat(bar.mesh().volume()).isCloseTo(0.020976, within(1e-15));
  }

  /** Cavalieri: a leaning prism has the volume of the upright one of the same height. */
  @Test
  void aLeaningSweepHasTheVolumeOfTheUprightOne() {
    Outline section = Outline.rectangle(0, 0, 2, 3);
    Extrusion leaning = new Extrusion(Transform.IDENTITY, section, new Vec3(1.7, -0.4, 5));
    assertThat(leaning.volume()).isCloseTo(30, within(1e-12));
    assertThat(leaning.mesh().volume()).isCloseTo(30, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void theMeshIsClosedAndHoldsTheVolumeInAnyFrame(long seed) {
    Random random = new Random(seed);
    Outline section = OutlineTest.starWithHoles(random, 5 + random.nextInt(9), random.nextInt(3));
    Vec3 sweep = new Vec3(random.nextDouble(), random.nextDouble(), random.nextBoolean() ? 2 : -2);
    Transform rigid =
        Transform.frame(
            new Vec3(100 * random.nextDouble(), 7, 0),
            new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()),
            new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()));
    Transform mirrored = new Transform(rigid.origin(), rigid.x().negated(), rigid.y(), rigid.z());
    for (Transform frame : List.of(rigid, mirrored)) {
      Extrusion body = new Extrusion(frame, section, sweep);
      Mesh mesh = body.mesh();
      assertThat(mesh.volume()).isCloseTo(section.area() * 2, within(1e-9));
      assertThat(body.volume()).isCloseTo(section.area() * 2, within(1e-9));
      assertThat(openEdges(mesh)).isZero();
    }
  }

  @Test
  void movingTheBodyAndMovingItsMeshAreTheSame() {
    Extrusion body = Extrusion.straight(Transform.IDENTITY, Outline.rectangle(0, 0, 1, 2), 3);
    Transform map = Transform.frame(new Vec3(5, 6, 7), new Vec3(1, 2, 3), Vec3.X);
    Mesh moved = body.transformed(map).mesh();
    assertThat(moved.volume()).isCloseTo(6, within(1e-9));
    Mesh expected = body.mesh().transformed(map);
    for (int i = 0; i < moved.vertexCount(); i++) {
      assertThat(moved.vertex(i).distance(expected.vertex(i))).isLessThan(1e-12);
    }
  }

  @Test
  void aMirroredMeshIsTurnedSoThatItsVolumeStaysPositive() {
    Mesh box = Extrusion.straight(Transform.IDENTITY, Outline.rectangle(0, 0, 1, 1), 1).mesh();
    Transform mirror = new Transform(Vec3.ZERO, Vec3.X.negated(), Vec3.Y, Vec3.Z);
    assertThat(box.transformed(mirror).volume()).isCloseTo(1, within(1e-12));
  }

  /** Each edge of a closed surface is walked once each way. */
  private static int openEdges(Mesh mesh) {
    Map<Long, Integer> walked = new HashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        long a = mesh.corner(t, k);
        long b = mesh.corner(t, (k + 1) % 3);
        walked.merge(Math.min(a, b) << 32 | Math.max(a, b), a < b ? 1 : -1, Integer::sum);
      }
    }
    return (int) walked.values().stream().filter(n -> n != 0).count();
  }
}
