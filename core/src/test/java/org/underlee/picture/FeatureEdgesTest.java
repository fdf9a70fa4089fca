package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

class FeatureEdgesTest {
  private static final Vec3 FAR = new Vec3(1e6, 2e6, 3e3);

  @Test
  void aBlockHasTwelveCreasesAndNoDiagonals() {
    FeatureEdges features = FeatureEdges.of(DemoDeck.block(0, 0, 0, 1, 2, 3));
    assertThat(features.closed()).isTrue();
    assertThat(edges(features)).hasSize(12).allMatch(FeatureEdges.Edge::crease);
  }

  @Test
  void aBlockWhoseFacesShareNoVerticesIsWelded() {
    Mesh loose = loose(DemoDeck.block(0, 0, 0, 1, 2, 3));
    assertThat(loose.vertexCount()).isEqualTo(36);
    assertThat(FeatureEdges.of(loose).closed()).isTrue();
    assertThat(edges(FeatureEdges.of(loose))).hasSize(12);
  }

  @Test
  void roundingNoiseFarFromTheOriginDoesNotOpenAMesh() {
    Transform turn = Transform.frame(FAR, new Vec3(0.3, 0.4, 0.8), new Vec3(0.9, 0.1, 0));
    Mesh noisy = loose(DemoDeck.block(0, 0, 0, 1, 2, 3)).transformed(turn);
    assertThat(FeatureEdges.of(noisy).closed()).isTrue();
    assertThat(edges(FeatureEdges.of(noisy))).hasSize(12);
  }

  @Test
  void aSheetHasItsFourBordersAndIsOpen() {
    Mesh sheet =
        new Mesh(new double[] {0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0}, new int[] {0, 1, 2, 0, 2, 3});
    FeatureEdges features = FeatureEdges.of(sheet);
    assertThat(features.closed()).isFalse();
    assertThat(edges(features)).hasSize(4).allMatch(e -> e.faceB() == FeatureEdges.NO_FACE);
  }

  @Test
  void theJointsOfAPipesFacetsAreOutlinesOnly() {
    Outline ring = Outline.of(Outline.circle(0, 0, 0.04, 24));
    FeatureEdges features = FeatureEdges.of(Extrusion.straight(Transform.IDENTITY, ring, 2).mesh());
    assertThat(edges(features).stream().filter(FeatureEdges.Edge::crease)).hasSize(48);
    assertThat(edges(features).stream().filter(e -> !e.crease())).hasSize(24);
  }

  @Test
  void aRoofOfLessThanTwentyDegreesHasNoCreaseAndOneOfMoreHas() {
    assertThat(ridge(19.5)).isFalse();
    assertThat(ridge(20.5)).isTrue();
  }

  @Test
  void faceDirectionsThatDisagreeStillGiveTheCreases() {
    Mesh mixed =
        new Mesh(new double[] {0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0}, new int[] {0, 1, 2, 0, 3, 2});
    assertThat(edges(FeatureEdges.of(mixed))).hasSize(4);
  }

  /** Whether two faces that turn by an angle from each other meet in a crease. */
  private static boolean ridge(double degrees) {
    double angle = Math.toRadians(degrees);
    double[] xyz = {0, 0, 0, 0, 1, 0, -1, 0.5, 0, Math.cos(angle), 0.5, -Math.sin(angle)};
    Mesh roof = new Mesh(xyz, new int[] {0, 1, 2, 1, 0, 3});
    return edges(FeatureEdges.of(roof)).stream()
        .anyMatch(e -> e.faceB() != FeatureEdges.NO_FACE && e.crease());
  }

  private static List<FeatureEdges.Edge> edges(FeatureEdges features) {
    return IntStream.range(0, features.count()).mapToObj(features::edge).toList();
  }

  private static Mesh loose(Mesh mesh) {
    int count = 3 * mesh.triangleCount();
    double[] xyz = new double[3 * count];
    int[] corners = new int[count];
    for (int i = 0; i < count; i++) {
      Vec3 p = mesh.point(i / 3, i % 3);
      xyz[3 * i] = p.x();
      xyz[3 * i + 1] = p.y();
      xyz[3 * i + 2] = p.z();
      corners[i] = i;
    }
    return new Mesh(xyz, corners);
  }
}
