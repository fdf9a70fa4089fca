package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.drainage.ByHand.drained;
import static org.underlee.drainage.ByHand.ring;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;

/**
 * Where a corner lies on the line between two others, cutting a face into triangles leaves one
 * without area; its direction is rounding, and no water may be led by it.
 */
class FlatTrianglesTest {
  private static final Offset<Double> NEAR = within(1e-9);

  /** A pan of 2 m by 1 m as of {@link ByHand#drained()}, with a square hole. */
  private static Mesh holed(double x, double y, double side) {
    Outline plan = new Outline(ring(0, 0, 2, 1), List.of(ring(x, y, x + side, y + side)));
    return ByHand.sheet(plan, 0.1, -0.02, 0);
  }

  /** One corner of the hole is on the line from one corner of the pan to the opposite one. */
  @ParameterizedTest
  @CsvSource({
    "0.5, 0.25", "0.4, 0.25", "0.5, 0.15", "0.4, 0.1", "1.2, 0.6", "1.1, 0.5", // one diagonal
    "0.5, 0.75", "0.4, 0.75", "0.5, 0.65", "0.4, 0.7", "1.2, 0.3", "1.1, 0.35" // the other
  })
  void aHoleWithItsCornerOnADiagonalTakesTheRainOfTheStripAboveIt(double x, double y) {
    Map<String, Double> leaks =
        LeakAreas.of(drained().put("pan", Kind.SHEET, holed(x, y, 0.1)).proof());
    assertThat(leaks).containsOnlyKeys("open-hole pan", "open-hole ");
    assertThat(leaks.get("open-hole pan")).isCloseTo(0.1 * x, NEAR);
    assertThat(leaks.get("open-hole ")).isCloseTo(0.01, NEAR);
  }

  /** 6 in tenths is a little more than the line is there: the triangle has a trace of area. */
  @Test
  void aTraceOfAreaIsNone() {
    Map<String, Double> leaks =
        LeakAreas.of(drained().put("pan", Kind.SHEET, holed(1, 6 * 0.1, 0.2)).proof());
    assertThat(leaks.get("open-hole pan")).isCloseTo(0.2, NEAR);
    assertThat(leaks.get("open-hole ")).isCloseTo(0.04, NEAR);
  }

  /**
   * A plate of 3 by 3 by 1 whose top is cut so that one triangle has its three corners on a line,
   * the middle one off it by as little as given: inside of the top, or along its edge.
   */
  private static Mesh plate(boolean inside, double off) {
    double[] xyz = {
      0,
      0,
      0,
      3,
      0,
      0,
      3,
      3,
      0,
      0,
      3,
      0, //
      0,
      0,
      1,
      3,
      0,
      1,
      3,
      3,
      1,
      0,
      3,
      1, //
      inside ? 1 + off : 1,
      inside ? 1 - off : 0,
      1
    };
    List<Integer> corners = new ArrayList<>(List.of(0, 2, 1, 0, 3, 2));
    corners.addAll(List.of(1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7));
    corners.addAll(List.of(0, 1, 5, 0, 5, 4));
    corners.addAll(
        inside
            ? List.of(4, 5, 8, 5, 6, 8, 4, 8, 6, 4, 6, 7)
            : List.of(4, 8, 5, 8, 5, 6, 4, 8, 7, 8, 6, 7));
    return new Mesh(xyz, corners.stream().mapToInt(c -> c).toArray());
  }

  private static Facet top(Mesh mesh) {
    List<Facet> up =
        FacetReader.read(List.of(new Piece("p", Kind.SHEET, mesh, false)), Transform.IDENTITY)
            .stream()
            .filter(Facet::up)
            .toList();
    assertThat(up).hasSize(1);
    return up.get(0);
  }

  /**
   * The first offset is no more than rounding leaves, the last what two drawn corners may differ.
   */
  @ParameterizedTest
  @CsvSource({"0", "1e-16", "1e-12", "1e-5"})
  void aTriangleWithoutAreaInsideOfAFaceLeavesNothingOfItsEdges(double off) {
    Facet top = top(plate(true, off));
    assertThat(top.edges()).hasSize(4 * 4);
    assertThat(top.at(2, 1)).isCloseTo(1, NEAR);
  }

  @Test
  void aTriangleWithoutAreaAlongAnEdgeGoesWithItsFace() {
    Facet top = top(plate(false, 0));
    assertThat(top.extent()).isCloseTo(9, NEAR);
    assertThat(top.at(2, 1)).isCloseTo(1, NEAR);
    assertThat(top.slope()).isZero();
  }

  /** A wall's own triangle without area borders no face that counts. */
  @Test
  void aTriangleWithoutAreaInAWallIsLeftOut() {
    Mesh box = ByHand.box(0, 0, 0, 1, 1, 1);
    Mesh flat = new Mesh(new double[] {5, 5, 0, 5, 5, 0.5, 5, 5, 1}, new int[] {0, 1, 2, 0, 2, 1});
    assertThat(top(Mesh.union(List.of(box, flat))).edges()).hasSize(4 * 4);
  }
}
