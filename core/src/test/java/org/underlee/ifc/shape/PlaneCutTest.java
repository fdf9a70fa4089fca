package org.underlee.ifc.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.ifc.shape.PlaneCut.Plane;

class PlaneCutTest {
  /** A U-shaped bar with a hole: 9 − 1·2 − 0.25 = 6.75 in area, 2 long. */
  private static Mesh bar() {
    List<Vec2> u =
        List.of(
            new Vec2(0, 0),
            new Vec2(3, 0),
            new Vec2(3, 3),
            new Vec2(2, 3),
            new Vec2(2, 1),
            new Vec2(1, 1),
            new Vec2(1, 3),
            new Vec2(0, 3));
    List<Vec2> hole =
        List.of(
            new Vec2(0.25, 0.25), new Vec2(0.75, 0.25), new Vec2(0.75, 0.75), new Vec2(0.25, 0.75));
    Outline section = new Outline(u, List.of(hole));
    return MeshBuilder.welded(Extrusion.straight(Transform.IDENTITY, section, 2).mesh());
  }

  @Test
  void theTwoSidesOfAnyPlaneMakeUpTheWhole() {
    Mesh bar = bar();
    double grid = PlaneCut.grid(bar);
    Random random = new Random(5);
    for (int i = 0; i < 500; i++) {
      // Every third plane runs along an axis through a grid point: corners and faces on the plane.
      boolean aligned = i % 3 == 0;
      Vec3 through =
          aligned
              ? new Vec3(random.nextInt(4), random.nextInt(4), random.nextInt(3))
              : new Vec3(3 * random.nextDouble(), 3 * random.nextDouble(), random.nextDouble());
      Vec3 normal =
          aligned
              ? List.of(Vec3.X, Vec3.Y, Vec3.Z, new Vec3(1, 1, 0).unit()).get(random.nextInt(4))
              : new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian())
                  .unit();
      Plane plane = new Plane(through, normal);
      double above = PlaneCut.above(bar, plane, grid, new CutWork()).volume();
      double below = PlaneCut.above(bar, plane.turned(), grid, new CutWork()).volume();
      assertThat(above).as("%s", plane).isGreaterThanOrEqualTo(0);
      assertThat(above + below).as("%s", plane).isCloseTo(13.5, Offset.offset(1e-7));
    }
  }

  @Test
  void whatIsKeptLiesAboveThePlane() {
    Plane plane = new Plane(new Vec3(1.5, 1.5, 1), new Vec3(1, 2, -1).unit());
    Mesh kept = PlaneCut.above(bar(), plane, PlaneCut.grid(bar()), new CutWork());
    for (int i = 0; i < kept.vertexCount(); i++) {
      assertThat(plane.height(kept.vertex(i))).isGreaterThan(-1e-7);
    }
  }

  @Test
  void anOpenSurfaceCannotBeCapped() {
    Mesh open = new Mesh(new double[] {0, 0, -1, 1, 0, 1, 0, 1, 1}, new int[] {0, 1, 2});
    assertThatThrownBy(
            () ->
                PlaneCut.above(
                    open, new Plane(Vec3.ZERO, Vec3.Z), PlaneCut.grid(open), new CutWork()))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("not a closed solid");
  }
}
