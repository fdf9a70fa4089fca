package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.drainage.ByHand.box;
import static org.underlee.drainage.ByHand.drained;
import static org.underlee.drainage.ByHand.ring;
import static org.underlee.drainage.ByHand.sheet;

import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** What joists shed, and where nothing is hung, worked out on paper. */
class JoistsByHandTest {
  private static final Offset<Double> STRIP = LeakAreas.STRIP;

  /** A bar of 40 mm down the middle of a pan: half of its rain to each of two pans. */
  @Test
  void aJoistShedsHalfOfItsRainToEachSide() {
    DrainProof proof =
        new ByHand()
            .put("joist", Kind.JOIST, box(0, 0.48, 0.2, 2, 0.52, 0.4))
            .put("left", Kind.SHEET, sheet(0, 0, 2, 0.49, 0.1, -0.02))
            .put("right", Kind.SHEET, sheet(0, 0.51, 2, 1, 0.1, -0.02))
            .bay("B1", ring(0, 0, 2, 1))
            .proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("edge left", 1.0, "edge right", 1.0));
  }

  /** 40 mm wide, askew by 200 mm on 2 m: rain on either half of it runs off on that half's side. */
  @ParameterizedTest
  @CsvSource({"0.38, 0.38", "0.40, 0.42"})
  void aJoistThatRunsAskewIsPartedAlongItsMiddle(double half, double side) {
    DrainProof proof =
        new ByHand()
            .put("joist", Kind.JOIST, box(0, 0, 0, 1, 1, 1).transformed(askew(0.38, 0.04)))
            .bay("B1", strip(half, 0.02))
            .proof();
    assertThat(proof.leaks()).hasSize(1);
    assertThat(proof.leaks().get(0).area()).isCloseTo(0.04, STRIP);
    Vec3 at = proof.leaks().get(0).at();
    assertThat(at.y()).isCloseTo(side + 0.1 * at.x(), STRIP);
  }

  private static Transform askew(double from, double width) {
    return new Transform(new Vec3(0, from, 0), new Vec3(2, 0.2, 0), new Vec3(0, width, 0), Vec3.Z);
  }

  private static List<Vec2> strip(double from, double width) {
    return List.of(
        new Vec2(0, from),
        new Vec2(2, from + 0.2),
        new Vec2(2, from + width + 0.2),
        new Vec2(0, from + width));
  }

  @Test
  void aJoistAcrossTheFallShedsUpAndDown() {
    DrainProof proof =
        new ByHand()
            .put("beam", Kind.JOIST, box(0.9, 0, 0.2, 1.1, 1, 0.4))
            .put("up", Kind.SHEET, sheet(0, 0, 0.95, 1, 0.15, -0.02))
            .put("down", Kind.SHEET, sheet(1.05, 0, 2, 1, 0.1, -0.02))
            .rainOn(0.9, 0, 1.1, 1)
            .proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("edge up", 0.1, "edge down", 0.1));
  }

  /** Two plies of 40 mm, 1.9 m long, over a slot of 20 mm between two pans. */
  private static ByHand plies(double secondTop) {
    return drained()
        .without("pan")
        .put("one", Kind.JOIST, box(0, 0.46, 0.2, 1.9, 0.5, 0.4))
        .put("two", Kind.JOIST, box(0, 0.5, 0.2, 1.9, 0.54, secondTop))
        .put("left", Kind.SHEET, sheet(0, 0, 2, 0.49, 0.1, -0.02))
        .put("right", Kind.SHEET, sheet(0, 0.51, 2, 1, 0.1, -0.02));
  }

  /** The halves of both next to the seam run in, 20 mm of 1.9 m each. */
  @ParameterizedTest
  @ValueSource(doubles = {0.4, 0.419, 0.381})
  void waterRunsIntoTheSeamOfTwoPlies(double secondTop) {
    assertThat(LeakAreas.of(plies(secondTop).proof()).get("ply-seam ")).isCloseTo(0.076, STRIP);
  }

  @Test
  void waterRunsDownTheFaceBesideAPlyThatIsMuchLowerAndIntoTheSeamBesideOneThatIsMuchHigher() {
    Map<String, Double> found = LeakAreas.of(plies(0.37).proof());
    assertThat(found.get("joist-face ")).isCloseTo(0.038, STRIP);
    assertThat(found.get("ply-seam ")).isCloseTo(0.038, STRIP);
  }

  @Test
  void aStripUnderTheSeamTakesItsWater() {
    DrainProof proof =
        plies(0.4).put("strip", Kind.SHEET, sheet(0, 0.47, 2, 0.53, 0.15, -0.02)).proof();
    LeakAreas.assertThatTheyAre(proof, Map.of());
    assertThat(proof.drained()).isCloseTo(2.1, STRIP);
  }

  @Test
  void aBayWithNothingInItIsOpenAndTheDeckBeyondTheGutterIsBeyondIt() {
    ByHand one = drained().bay("B3", ring(0, 1.1, 2, 1.6)).bay("B4", ring(2.1, 0, 2.4, 0.2));
    // The gutter's outer face is at 2.16; B1 and B2 end at 2.1 within it.
    DrainProof proof = one.proof();
    assertThat(LeakAreas.of(proof).get("open-bay ")).isCloseTo(1.0, STRIP);
    assertThat(proof.leaks().stream().filter(l -> l.cause() == LeakCause.OPEN_BAY))
        .allMatch(l -> l.bay().equals("B3"));
  }

  /** The gutter's outer face is at 2.16; the outer half of its rim of 10 mm drips. */
  @Test
  void rainBehindTheGutterIsToldApartFromRainBeyondIt() {
    DrainProof far = drained().rainOn(0, 0, 3, 1).proof();
    LeakAreas.assertThatTheyAre(far, Map.of("beyond-gutter ", 0.84, "edge gutter", 0.005));
    DrainProof near = drained().rainOn(0, 0, 2.18, 1).proof();
    LeakAreas.assertThatTheyAre(near, Map.of("behind-gutter ", 0.02, "edge gutter", 0.005));
  }
}
