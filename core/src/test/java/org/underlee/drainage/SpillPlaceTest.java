package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Standing water runs over where its rim is lowest and nearest, and the leak is told of there. */
class SpillPlaceTest {
  private static final double BRIM = 0.03;

  @Test
  void waterThatSpillsIsToldOfWhereItRunsOverAndNotAtAnotherEdgeOfTheRim() {
    // The rim uphill is met first, but it is wide, so the edge of the one downhill is nearer.
    Mesh tray =
        Mesh.union(
            List.of(
                box(new Vec3(0, 0, -0.001), new Vec3(0.4, 2, 0)),
                box(new Vec3(-0.3, 0, -0.001), new Vec3(0, 2, BRIM)),
                box(new Vec3(0.4, 0, -0.001), new Vec3(0.42, 2, BRIM)),
                box(new Vec3(-0.3, -0.01, -0.001), new Vec3(0.42, 0, 2 * BRIM)),
                box(new Vec3(-0.3, 2, -0.001), new Vec3(0.42, 2.01, 2 * BRIM))));
    DrainProof proof =
        WaterProver.prove(
            new DrainCase(
                "deck-1/field-1",
                Transform.IDENTITY,
                List.of(
                    new Catchment(
                        "B1",
                        List.of(
                            new Vec2(0.1, 0.1),
                            new Vec2(0.3, 0.1),
                            new Vec2(0.3, 1.9),
                            new Vec2(0.1, 1.9)))),
                List.of(new Piece("tray", Piece.Kind.SHEET, tray, false)),
                OptionalDouble.empty()));
    assertThat(proof.leaks()).hasSize(1);
    Leak leak = proof.leaks().get(0);
    assertThat(leak.cause()).isEqualTo(LeakCause.SPILL);
    assertThat(leak.at().x()).isCloseTo(0.42, within(0.001));
    assertThat(proof.ponds()).hasSize(1);
    assertThat(proof.ponds().get(0).depth()).isCloseTo(BRIM, within(1e-6));
    assertThat(proof.ponds().get(0).spillsAt().x()).isCloseTo(0.42, within(0.001));
  }

  private static Mesh box(Vec3 a, Vec3 b) {
    double[] xyz = new double[24];
    for (int i = 0; i < 8; i++) {
      xyz[3 * i] = (i & 1) == 0 ? a.x() : b.x();
      xyz[3 * i + 1] = (i & 2) == 0 ? a.y() : b.y();
      xyz[3 * i + 2] = (i & 4) == 0 ? a.z() : b.z();
    }
    int[] corners = {
      0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1,
      3, 7, 1, 7, 5
    };
    return new Mesh(xyz, corners);
  }
}
