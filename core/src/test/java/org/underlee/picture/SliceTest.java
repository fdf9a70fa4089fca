package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** Cut faces and side views against closed forms. */
class SliceTest {
  private static double area(List<Outline> faces) {
    return faces.stream().mapToDouble(Outline::area).sum();
  }

  private static Vec3 direction(Random random) {
    return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
  }

  private static Mesh ring() {
    Outline section =
        new Outline(Outline.circle(0, 0, 0.05, 32), List.of(Outline.circle(0, 0, 0.045, 32)));
    return Extrusion.straight(Transform.IDENTITY, section, 2).mesh();
  }

  @Test
  void aPipeCutAcrossIsARing() {
    Transform alongZ = new Transform(Vec3.ZERO, Vec3.Z, Vec3.X, Vec3.Y);
    List<Outline> faces = MeshSlice.of(ring(), alongZ, 0.7);
    assertThat(faces).hasSize(1);
    assertThat(faces.get(0).holes()).hasSize(1);
    assertThat(area(faces)).isCloseTo(Math.PI * (0.05 * 0.05 - 0.045 * 0.045), within(1e-7));
  }

  @Test
  void aPlaneThatPassesByCutsNothing() {
    Transform alongZ = new Transform(Vec3.ZERO, Vec3.Z, Vec3.X, Vec3.Y);
    assertThat(MeshSlice.of(ring(), alongZ, 2.5)).isEmpty();
  }

  @Test
  void slicesOfAnySolidInAnyDirectionAddUpToItsVolume() {
    Random random = new Random(11);
    for (int round = 0; round < 20; round++) {
      Vec3 along = direction(random);
      Transform place =
          Transform.frame(direction(random).times(3), direction(random), direction(random));
      Mesh solid =
          Extrusion.straight(place, Outline.rectangle(0, 0, 0.2 + random.nextDouble(), 0.4), 1.1)
              .mesh();
      Transform frame = Transform.frame(Vec3.ZERO, direction(random), along);
      double from = Double.POSITIVE_INFINITY;
      double to = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < solid.vertexCount(); i++) {
        double x = frame.toLocal(solid.vertex(i)).x();
        from = Math.min(from, x);
        to = Math.max(to, x);
      }
      int slices = 400;
      double step = (to - from) / slices;
      double sum = 0;
      for (int i = 0; i < slices; i++) {
        sum += step * area(MeshSlice.of(solid, frame, from + (i + 0.5) * step));
      }
      assertThat(sum).as("round %s", round).isCloseTo(solid.volume(), within(2e-4));
    }
  }

  @Test
  void theSideViewOfABlockIsItsShadow() {
    Mesh block = DemoDeck.block(0, 0, 0, 0.3, 2, 0.5);
    List<Outline> side = MeshElevation.of(List.of(block), Transform.IDENTITY);
    assertThat(side).hasSize(1);
    assertThat(area(side)).isCloseTo(2 * 0.5, within(1e-9));
  }

  @Test
  void aNotchIsSeenFromTheSide() {
    Outline notched =
        Outline.of(
            List.of(
                new org.underlee.geom.Vec2(0, 0),
                new org.underlee.geom.Vec2(2, 0),
                new org.underlee.geom.Vec2(2, 0.1),
                new org.underlee.geom.Vec2(1.2, 0.1),
                new org.underlee.geom.Vec2(1.2, 0.04),
                new org.underlee.geom.Vec2(1, 0.04),
                new org.underlee.geom.Vec2(1, 0.1),
                new org.underlee.geom.Vec2(0, 0.1)));
    Transform alongX = new Transform(Vec3.ZERO, Vec3.Y, Vec3.Z, Vec3.X);
    Mesh leg = Extrusion.straight(alongX, notched, 0.001).mesh();
    assertThat(area(MeshElevation.of(List.of(leg), Transform.IDENTITY)))
        .isCloseTo(2 * 0.1 - 0.2 * 0.06, within(1e-9));
  }
}
