package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
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
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec3;

/**
 * Edges, laps, holes and falls of pans: where the rain of how much of each gets through, on paper.
 */
class LapsByHandTest {
  private static final Offset<Double> STRIP = LeakAreas.STRIP;

  /**
   * Between the pan's end at 1.9 and the gutter's wall at 1.94 rain falls through; of the wall's 10
   * mm one half drips to each side.
   */
  @Test
  void aPanThatEndsBeforeTheGutterDripsAndLeavesAGap() {
    DrainProof proof = drained().put("pan", Kind.SHEET, sheet(0, 0, 1.9, 1, 0.1, -0.02)).proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("edge pan", 1.9, "gap ", 0.04, "edge gutter", 0.005));
    assertThat(proof.drained()).isCloseTo(0.155, STRIP);
    assertThat(proof.leaks().stream().map(l -> l.cause() + " " + l.bay()))
        .containsExactly("GAP B2", "GAP B1", "EDGE B2", "EDGE B1", "EDGE B2", "EDGE B1");
    Leak worst = proof.leaks().get(2);
    assertThat(worst.area()).isCloseTo(1.9 * 0.6, STRIP);
    assertThat(worst.at().x()).isCloseTo(1.9, STRIP);
    assertThat(worst.at().z()).isCloseTo(0.1 - 0.02 * 1.9, within(1e-6));
    assertThat(worst.litresPerHour(100)).isCloseTo(114, within(0.01));
    assertThat(worst.regions().stream().flatMap(List::stream).mapToDouble(Vec3::x).max())
        .hasValueCloseTo(1.9, STRIP);
  }

  /** It falls 60 mm there: 10 mm within the gutter's wall is enough and less is not. */
  @ParameterizedTest
  @CsvSource({"1.989, true", "1.991, false"})
  void aFreeDripFallsTenMillimetresInsideOfWhatCatchesIt(double gutter, boolean caught) {
    DrainProof proof =
        drained()
            .put("gutter", Kind.GUTTER, ByHand.gutter(gutter + 0.01))
            .put("outlet", Kind.OUTLET, box(2.05, 0.9, -0.1, 2.15, 1, -0.0105))
            .put("pipe", Kind.PIPE, box(2.05, 0.9, -2, 2.15, 1, -0.09))
            .proof();
    assertThat(LeakAreas.of(proof).getOrDefault("short-lap pan", 0.0))
        .isCloseTo(caught ? 0 : 2, STRIP);
  }

  /** The upper of two pans, whose lower end is 1 m down the fall, 2 mm above the lower one. */
  private static ByHand lapped(double from, double higher) {
    return drained()
        .put("pan", Kind.SHEET, sheet(from, 0, 2, 1, 0.1, -0.02))
        .put("upper", Kind.SHEET, sheet(0, 0, 1, 1, 0.1 + higher, -0.02));
  }

  @ParameterizedTest
  @CsvSource({
    // water that drops less than 8 mm can creep back: 25 mm; else 10 mm
    "0.974, 0.002, true",
    "0.976, 0.002, false",
    "0.976, 0.0079, false",
    "0.976, 0.0081, true",
    "0.991, 0.0081, false"
  })
  void aLapIsLongEnoughForItsDrop(double from, double higher, boolean holds) {
    DrainProof proof = lapped(from, higher).proof();
    LeakAreas.assertThatTheyAre(proof, holds ? Map.of() : Map.of("short-lap upper", 1.0));
  }

  /** The upper pan lies under the lower one by 100 mm, with 2 mm of room. */
  @Test
  void aPanLaidUnderTheNextOneLosesAllOfItsWater() {
    DrainProof proof = lapped(0.9, -0.002).proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("reversed-lap upper", 0.9));
    assertThat(proof.drained()).isCloseTo(1.2, STRIP);
  }

  /** The same in contact: it keeps out standing water, and none that runs. */
  @Test
  void aPanUnderTheNextOneInContactLosesItsWaterToo() {
    LeakAreas.assertThatTheyAre(lapped(0.9, -0.001).proof(), Map.of("reversed-lap upper", 0.9));
  }

  /** A pan that is 10 mm over the end of another does not lie on it: that one's edge drips. */
  @Test
  void aPanHighAboveTheEndOfAnotherIsNoReversedLap() {
    DrainProof proof = lapped(0.9, -0.01).proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("edge upper", 0.9));
  }

  /** A hole of 100 by 100 mm, half a metre down: its own rain and that of the strip above it. */
  @Test
  void aHoleTakesTheRainOfTheStripAboveIt() {
    Outline holed = new Outline(ring(0, 0, 2, 1), List.of(ring(0.5, 0.65, 0.6, 0.75)));
    DrainProof proof = drained().put("pan", Kind.SHEET, sheet(holed, 0.1, -0.02, 0)).proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("open-hole pan", 0.05, "open-hole ", 0.01));
    assertThat(proof.drained()).isCloseTo(2.04, STRIP);
    DrainProof sealed =
        drained().put("pan", Kind.SHEET, sheet(holed, 0.1, -0.02, 0)).sealed("pan").proof();
    LeakAreas.assertThatTheyAre(sealed, Map.of());
  }

  /** Of a slot of 12 mm the middle is 9 or 12 mm from the pan's side; 10 mm make it a hole. */
  @ParameterizedTest
  @CsvSource({"0.006, open-hole pan", "0.003, edge pan"})
  void aSlotAtTheVerySideIsAnEdge(double from, String told) {
    Outline slotted = new Outline(ring(0, 0, 2, 1), List.of(ring(0.5, from, 0.6, from + 0.012)));
    DrainProof proof = drained().put("pan", Kind.SHEET, sheet(slotted, 0.1, -0.02, 0)).proof();
    assertThat(LeakAreas.of(proof)).containsKey(told).hasSize(2);
  }

  @Test
  void aPanThatFallsToTheHouseIsToldAndRunsOffItsHighEnd() {
    DrainProof proof = drained().put("pan", Kind.SHEET, sheet(0, 0, 2, 1, 0.07, 0.02)).proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("back-fall pan", 2.0));
    assertThat(proof.flat()).containsExactly("pan");
  }

  /** Less than 1 mm in 1 m: it drips at all four sides, with a share of each side's length. */
  @ParameterizedTest
  @CsvSource({"-0.0009, true", "-0.0011, false"})
  void aPanWithLessThanAMillimetreOfFallInAMetreIsLevel(double fall, boolean level) {
    DrainProof proof = drained().put("pan", Kind.SHEET, sheet(0, 0, 2, 1, 0.1, fall)).proof();
    assertThat(proof.flat()).isEqualTo(level ? List.of("pan") : List.of());
  }

  /** A flashing of 300 mm may fall to the house; one with 200 cm² of level face may stay level. */
  @Test
  void aShortPieceMayFallTheOtherWayAndASmallOneMayBeLevel() {
    ByHand one =
        drained()
            .put("short", Kind.SHEET, sheet(0.1, 0.1, 0.39, 0.9, 0.2, 0.02))
            .put("longer", Kind.SHEET, sheet(0.5, 0.1, 0.81, 0.9, 0.2, 0.02))
            .put("small", Kind.SHEET, sheet(1, 0.1, 1.1, 0.29, 0.2, 0))
            .put("larger", Kind.SHEET, sheet(1, 0.4, 1.1, 0.61, 0.2, 0));
    assertThat(one.proof().flat()).containsExactly("longer", "larger");
  }

  /** 1:50 down and 1:100 across, on a square: two of three parts go down. */
  @Test
  void waterPartsBetweenTwoSidesAsTheFallToEach() {
    DrainProof proof =
        new ByHand()
            .put("pan", Kind.SHEET, sheet(Outline.rectangle(0, 0, 1, 1), 0.1, -0.02, -0.01))
            .put("below", Kind.SHEET, sheet(0, 0, 2, 1, 0.05, -0.01))
            .bay("B1", ring(0, 0, 1, 1))
            .proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("edge pan", 1.0 / 3, "edge below", 2.0 / 3));
    assertThat(proof.drained()).isZero();
  }

  /** A share of 4 % of a column's rain is too little to show where it lands; 6 % is not. */
  @ParameterizedTest
  @CsvSource({"0.04, 0", "0.06, 1"})
  void aLeakShowsWhereTheRainLandsThatItTakesMuchOf(double share, int shown) {
    double across = -0.02 * share / (1 - share);
    DrainProof proof =
        new ByHand()
            .put("pan", Kind.SHEET, sheet(Outline.rectangle(0, 0, 1, 1), 0.1, -0.02, across))
            .put("below", Kind.SHEET, sheet(0, 0, 2, 1, 0.05, -0.01))
            .bay("B1", ring(0, 0, 1, 1))
            .proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("edge pan", share, "edge below", 1 - share));
    Leak little =
        proof.leaks().stream().filter(l -> l.parts().contains("pan")).findFirst().orElseThrow();
    assertThat(little.regions()).hasSize(shown);
    Leak most =
        proof.leaks().stream().filter(l -> l.parts().contains("below")).findFirst().orElseThrow();
    double middle = 0.1 - 0.01 + across / 2;
    assertThat(most.regions().get(0).stream().map(p -> p.x() + " " + p.y()))
        .containsExactly("0.0 0.0", "1.0 0.0", "1.0 1.0", "0.0 1.0");
    assertThat(most.regions().get(0)).allMatch(p -> Math.abs(p.z() - middle) < 1e-6);
  }

  @Test
  void ofLeaksOfOneSizeTheFirstBaysIsFirst() {
    DrainProof proof =
        drained()
            .put("pan", Kind.SHEET, sheet(0, 0, 1.9, 1, 0.1, -0.02))
            .rainOn(0, 0.5, 1.9, 1)
            .bay("B2", ring(0, 0, 1.9, 0.5))
            .proof();
    assertThat(proof.leaks().stream().map(Leak::bay)).containsExactly("B1", "B2");
  }
}
