package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;

/** Which faces of a solid count, and which of them lie over each other, by sizes told here. */
class LayersByHandTest {
  private static List<Facet> facets(Mesh mesh, boolean sealed) {
    return FacetReader.read(List.of(new Piece("p", Kind.SHEET, mesh, sealed)), Transform.IDENTITY);
  }

  private static Facet top(Mesh mesh, boolean sealed) {
    List<Facet> up = facets(mesh, sealed).stream().filter(Facet::up).toList();
    assertThat(up).hasSize(1);
    return up.get(0);
  }

  private static int edges(Facet facet) {
    return facet.edges().length / 4;
  }

  @Test
  void aBoxHasAnUpperAndALowerFaceOfFourEdges() {
    List<Facet> facets = facets(ByHand.box(1, 2, 3, 1.5, 4, 5), false);
    assertThat(facets).hasSize(2);
    assertThat(facets).allMatch(f -> edges(f) == 4 && f.piece() == 0 && !f.thin());
    Facet top = top(ByHand.box(1, 2, 3, 1.5, 4, 5), false);
    assertThat(top.at(1.2, 3)).isCloseTo(5, within(1e-9));
    assertThat(top.slope()).isZero();
    assertThat(top.length()).isCloseTo(0.5, within(1e-9));
    assertThat(top.extent()).isCloseTo(1, within(1e-9));
    assertThat(top.acrossU()).isTrue();
    assertThat(top(ByHand.box(1, 2, 3, 4, 3, 5), false).acrossU()).isFalse();
    for (int i = 0; i < top.edges().length; i += 4) {
      assertThat(top.edges()[i]).isLessThanOrEqualTo(top.edges()[i + 2]);
    }
  }

  @Test
  void aSlopingFaceRisesAsItsPlaneDoes() {
    Facet top = top(ByHand.sheet(Outline.rectangle(1, 1, 3, 2), 0.1, -0.02, 0.01), false);
    assertThat(top.b()).isCloseTo(-0.02, within(1e-9));
    assertThat(top.c()).isCloseTo(0.01, within(1e-9));
    assertThat(top.at(2, 1.5)).isCloseTo(0.1 - 0.04 + 0.015, within(1e-9));
    assertThat(top.slope()).isCloseTo(Math.hypot(0.02, 0.01), within(1e-9));
  }

  /** The sine of 3° is a twentieth: a rise of 25 on 1 is a wall, of 15 on 1 is none. */
  @ParameterizedTest
  @CsvSource({"15, 2", "25, 0"})
  void aFaceWithinThreeDegreesOfUprightIsAWall(double rise, int faces) {
    assertThat(facets(ByHand.sheet(0, 0, 1, 1, 0, rise), false)).hasSize(faces);
  }

  @ParameterizedTest
  @CsvSource({"0.0029, true", "0.0032, false"})
  void aFaceNarrowerThanThreeMillimetresIsThin(double width, boolean thin) {
    assertThat(top(ByHand.box(0, 0, 0, 1, width, 0.001), false).thin()).isEqualTo(thin);
    assertThat(top(ByHand.box(0, 0, 0, width, 1, 0.001), false).thin()).isEqualTo(thin);
  }

  @Test
  void aHoleThatIsSealedHasNoEdges() {
    Outline holed =
        new Outline(ByHand.ring(0, 0, 2, 1), List.of(ByHand.ring(0.5, 0.65, 0.6, 0.75)));
    assertThat(edges(top(ByHand.sheet(holed, 0, 0.01, 0), false))).isEqualTo(8);
    assertThat(edges(top(ByHand.sheet(holed, 0, 0.01, 0), true))).isEqualTo(4);
    assertThat(facets(ByHand.sheet(holed, 0, 0.01, 0), true)).allMatch(f -> edges(f) == 4);
  }

  private static Facet face(int piece, boolean up) {
    return new Facet(piece, up, 0, 0, 0, new double[] {0, 0, 1, 1}, false);
  }

  private static Layer[] layers(Stacker stacker) {
    return stacker.layers(Column.NOTHING);
  }

  /** Two solids of one piece, 40 or 60 µm apart. */
  @ParameterizedTest
  @CsvSource({"0.00004, 1", "0.00006, 2"})
  void solidsOfOnePieceThatTouchAreOneLayer(double gap, int count) {
    Stacker stacker = new Stacker();
    stacker.add(face(0, false), 0);
    stacker.add(face(0, true), 0.01 + gap + 0.01);
    stacker.add(face(0, true), 0.01);
    stacker.add(face(0, false), 0.01 + gap);
    Layer[] layers = layers(stacker);
    assertThat(layers).hasSize(count);
    assertThat(layers[0].topAt()).isCloseTo(0.02 + gap, within(1e-12));
    assertThat(layers[count - 1].bottomAt()).isZero();
  }

  /** A solid within another: its faces are inside. */
  @Test
  void aSolidWithinAnotherOfThePieceMakesNoLayer() {
    Stacker stacker = new Stacker();
    for (double height : new double[] {4, 3}) {
      stacker.add(face(0, true), height);
    }
    for (double height : new double[] {2, 1}) {
      stacker.add(face(0, false), height);
    }
    Layer[] layers = layers(stacker);
    assertThat(layers).hasSize(1);
    assertThat(layers[0].topAt()).isEqualTo(4);
    assertThat(layers[0].bottomAt()).isEqualTo(1);
  }

  @Test
  void twentyPiecesLieFromTheHighestDown() {
    Stacker stacker = new Stacker();
    for (int i = 0; i < 20; i++) {
      int height = 7 * i % 20;
      stacker.add(face(i, false), height);
      stacker.add(face(i, true), height + 0.5);
    }
    Layer[] layers = layers(stacker);
    assertThat(Stream.of(layers).map(l -> l.topAt()).toList())
        .hasSize(20)
        .isSortedAccordingTo((a, b) -> Double.compare(b, a));
    for (int k = 0; k < 20; k++) {
      assertThat(layers[k].place()).isEqualTo(k);
      assertThat(7 * layers[k].piece() % 20 + 0.5).isEqualTo(layers[k].topAt());
      assertThat(layers[k].bottomAt()).isEqualTo(layers[k].topAt() - 0.5);
    }
    stacker.clear();
    assertThat(layers(stacker)).isEmpty();
  }

  @Test
  void aFaceThatNothingIsAboveIsNoSolid() {
    Stacker stacker = new Stacker();
    stacker.add(face(0, false), 1);
    assertThat(layers(stacker)).isEmpty();
  }

  @Test
  void ofTwoPiecesAtOneHeightTheFirstIsFirst() {
    Stacker stacker = new Stacker();
    stacker.add(face(3, true), 1);
    stacker.add(face(2, true), 1);
    assertThat(Stream.of(layers(stacker)).map(Layer::piece)).containsExactly(2, 3);
  }
}
