package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/** Checks of meshes that several tests share. */
final class MeshAssert {
  /** A millionth of a millimetre, and of a cubic metre's thousandth. */
  private static final Offset<Double> NEAR = Offset.offset(1e-9);

  private MeshAssert() {}

  static void assertVolume(Mesh mesh, double cubicMetres) {
    assertThat(mesh.volume()).isCloseTo(cubicMetres, Offset.offset(1e-8 * cubicMetres));
  }

  static void assertBox(
      Mesh mesh, double x0, double y0, double z0, double x1, double y1, double z1) {
    assertPoint(mesh.bounds().min(), x0, y0, z0);
    assertPoint(mesh.bounds().max(), x1, y1, z1);
  }

  static void assertPoint(Vec3 p, double x, double y, double z) {
    assertThat(p.x()).as("x of %s", p).isCloseTo(x, NEAR);
    assertThat(p.y()).as("y of %s", p).isCloseTo(y, NEAR);
    assertThat(p.z()).as("z of %s", p).isCloseTo(z, NEAR);
  }

  /** Every edge has as many faces on one side as on the other. */
  static void assertClosed(Mesh mesh) {
    Map<String, Integer> balance = new HashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        Vec3 a = mesh.point(t, k);
        Vec3 b = mesh.point(t, (k + 1) % 3);
        balance.merge(a + "-" + b, 1, Integer::sum);
        balance.merge(b + "-" + a, -1, Integer::sum);
      }
    }
    assertThat(balance.values()).allMatch(n -> n == 0);
  }
}
