package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.drainage.ByHand.box;
import static org.underlee.drainage.ByHand.drained;
import static org.underlee.drainage.ByHand.ring;
import static org.underlee.drainage.ByHand.sheet;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * Areas of small assemblies, each worked out on paper from the sizes in {@link ByHand}: outlets,
 * pipes and what comes in.
 */
class WaterByHandTest {
  private static final Offset<Double> NEAR = within(1e-9);

  private static final Offset<Double> STRIP = LeakAreas.STRIP;

  @Test
  void everyDropOnASoundAssemblyIsInTheShareOfItsOutlet() {
    DrainProof proof = drained().proof();
    assertThat(proof.area()).isCloseTo(2.1, NEAR);
    assertThat(proof.drained()).isCloseTo(2.1, NEAR);
    assertThat(proof.dryFraction()).isCloseTo(1, NEAR);
    assertThat(proof.leaks()).isEmpty();
    assertThat(proof.ponds()).isEmpty();
    assertThat(proof.flat()).isEmpty();
    assertThat(proof.outlets()).hasSize(1);
    OutletShare share = proof.outlets().get(0);
    assertThat(share.outlet()).isEqualTo("outlet");
    assertThat(share.area()).isCloseTo(2.1, NEAR);
    assertThat(share.bays()).containsOnlyKeys("B1", "B2");
    assertThat(share.bays().get("B1")).isCloseTo(0.84, NEAR);
    assertThat(share.bays().get("B2")).isCloseTo(1.26, NEAR);
    assertThat(share.gutters()).containsOnlyKeys("gutter");
    assertThat(share.gutters().get("gutter")).isCloseTo(2.1, NEAR);
  }

  @Test
  void twoFieldsAreAddedUp() {
    DrainProof one = drained().without("pipe").proof();
    DrainProof both =
        WaterProver.prove(
            List.of(drained().given(), drained().without("pipe").onto(3, 1, 0.5).given()));
    assertThat(both.area()).isCloseTo(4.2, NEAR);
    assertThat(both.added()).isEqualTo(3);
    assertThat(both.drained()).isCloseTo(2.1, NEAR);
    assertThat(both.outlets()).hasSize(2);
    assertThat(both.blocked()).hasSize(2);
    assertThat(both.leaks()).hasSize(one.leaks().size());
  }

  /** The rim on the outer side is at 40 mm; the floor falls from 0 to −10 mm along 1 m. */
  @Test
  void behindABlockedOutletWaterStandsToTheLowestRim() {
    List<StandingWater> blocked = drained().proof().blocked();
    assertThat(blocked).hasSize(1);
    StandingWater water = blocked.get(0);
    assertThat(water.part()).isEqualTo("gutter");
    assertThat(water.blocked()).contains("outlet");
    assertThat(water.depth()).isCloseTo(0.05, within(1e-6));
    assertThat(water.area()).isCloseTo(0.2, STRIP);
    // 0.2 m wide, 1 m long, 45 mm deep in the mean
    assertThat(water.volume()).isCloseTo(0.009, within(1e-6));
    assertThat(water.mass()).isCloseTo(9, within(1e-3));
    assertThat(water.at().y()).isCloseTo(1, STRIP);
    assertThat(water.at().z()).isCloseTo(-0.01, within(1e-6));
    assertThat(water.spillsAt().z()).isCloseTo(0.04, within(1e-6));
    assertThat(water.spillsAt().x()).isBetween(2.15 - 1e-4, 2.16 + 1e-4);
    assertThat(water.spillsTo()).isEqualTo(LeakCause.SPILL.why() + ": gutter");
  }

  @Test
  void withoutAPipeAllOfItLeaksAtTheOutlet() {
    DrainProof proof = drained().without("pipe").proof();
    assertThat(proof.drained()).isZero();
    LeakAreas.assertThatTheyAre(proof, Map.of("no-downspout outlet", 2.1));
    assertThat(proof.leaks().get(0).bay()).isEmpty();
    assertThat(proof.leaks().get(0).regions()).isEmpty();
    assertThat(proof.leaks().get(0).field()).isEqualTo(ByHand.FIELD);
  }

  /** The pipe's foot is at −2; half a metre above the ground is the most. */
  @Test
  void aPipeMayEndHalfAMetreAboveTheGround() {
    LeakAreas.assertThatTheyAre(drained().ground(-2.5).proof(), Map.of());
    LeakAreas.assertThatTheyAre(
        drained().ground(-2.51).proof(), Map.of("short-downspout outlet", 2.1));
    DrainProof longer =
        drained().ground(-2.51).put("more", Kind.PIPE, box(2, 0.9, -2.4, 2.1, 1, -1.99)).proof();
    LeakAreas.assertThatTheyAre(longer, Map.of());
  }

  @ParameterizedTest
  @CsvSource({
    // right below, from beside, and with a gap in height
    "2, 0.9, -0.1, true",
    "2, 0.9, -0.104, true",
    "2, 0.9, -0.106, false",
    "2.051, 0.9, -0.1, false",
    "1.949, 0.9, -0.1, false",
    "2, 0.951, -0.1, false",
    "2, 0.849, -0.1, false",
    "2.049, 0.949, -0.1, true",
    "1.951, 0.851, -0.1, true"
  })
  void aPipeTakesTheWaterWhenItIsBelowTheMiddleOfTheOutlet(
      double x, double y, double top, boolean takes) {
    DrainProof proof =
        drained().put("pipe", Kind.PIPE, box(x, y, -2, x + 0.1, y + 0.1, top)).proof();
    assertThat(LeakAreas.of(proof).keySet())
        .isEqualTo(takes ? Set.of() : Set.of("no-downspout outlet"));
  }

  @Test
  void aBoardBelowTheOutletIsNoPipe() {
    LeakAreas.assertThatTheyAre(
        drained().put("pipe", Kind.SHEET, box(2, 0.9, -2, 2.1, 1, -0.09)).proof(),
        Map.of("no-downspout outlet", 2.1));
  }

  @Test
  void aPipeThatEndsNoLowerThanTheOutletIsNone() {
    LeakAreas.assertThatTheyAre(
        drained().put("pipe", Kind.PIPE, box(2, 0.9, -0.104, 2.1, 1, 0)).proof(),
        Map.of("no-downspout outlet", 2.1));
  }

  @Test
  void rainOfARoofIsAddedWhereItComesDown() {
    DrainProof proof = drained().onto(12, 1, 0.2).onto(5, 1, 0.8).onto(7, 9, 9).proof();
    assertThat(proof.area()).isCloseTo(2.1, NEAR);
    assertThat(proof.added()).isEqualTo(17);
    assertThat(proof.rain()).isCloseTo(19.1, NEAR);
    assertThat(proof.drained()).isCloseTo(19.1, NEAR);
    assertThat(proof.outlets().get(0).bays().get("B1")).isCloseTo(12.84, NEAR);
    assertThat(proof.outlets().get(0).bays().get("B2")).isCloseTo(6.26, NEAR);
  }

  @Test
  void rainOfARoofWhereNothingIsHungFallsThrough() {
    DrainProof proof = drained().bay("B3", ring(0, 1.1, 2, 1.6)).onto(12, 1, 1.3).proof();
    LeakAreas.assertThatTheyAre(proof, Map.of("open-bay ", 13.0));
  }

  /** The floor's underside is at −10.5 mm above the outlet; its top may be 40 mm lower. */
  @ParameterizedTest
  @CsvSource({"-0.05, true", "-0.051, false", "0.029, true", "0.03, false"})
  void anOutletFarFromTheFloorOfTheGutterTakesNothing(double top, boolean takes) {
    DrainProof proof = drained().put("outlet", Kind.OUTLET, box(2, 0.9, -0.1, 2.1, 1, top)).proof();
    LeakAreas.assertThatTheyAre(proof, takes ? Map.of() : Map.of("spill gutter", 2.1));
  }

  /**
   * The opening of the second outlet is a square of 70.7 mm at y 0.05, where the floor is higher:
   * it gets the rain on itself and above itself, and what stands when the first is shut.
   */
  @Test
  void whenTheLowerOfTwoOutletsIsShutTheWaterRisesToTheOther() {
    DrainProof proof =
        drained()
            .put("second", Kind.OUTLET, box(2, 0, -0.1, 2.1, 0.1, -0.0015))
            .put("its pipe", Kind.PIPE, box(2, 0, -2, 2.1, 0.1, -0.09))
            .proof();
    double half = 0.05 * Math.sqrt(0.5);
    assertThat(proof.outlets().get(1).area()).isCloseTo(2 * half * (0.05 + half), within(1e-6));
    assertThat(proof.drained()).isCloseTo(2.1, NEAR);
    assertThat(proof.blocked()).hasSize(1);
    StandingWater water = proof.blocked().get(0);
    double length = 1 - (0.05 + half);
    assertThat(water.depth()).isCloseTo(0.01 * length, within(1e-6));
    assertThat(water.volume()).isCloseTo(0.2 * 0.01 * length * length / 2, NEAR);
    assertThat(water.area()).isCloseTo(0.2 * length, NEAR);
    assertThat(water.spillsTo()).isEqualTo("second");
  }

  /** The field turned by 90° and moved. */
  @Test
  void placesAreToldInTheWorld() {
    Transform frame = new Transform(new Vec3(10, 20, 3), Vec3.Y, Vec3.X.negated(), Vec3.Z);
    DrainCase one = drained().put("pan", Kind.SHEET, sheet(0, 0, 1.9, 1, 0.1, -0.02)).given();
    DrainProof here = WaterProver.prove(one);
    DrainProof there =
        WaterProver.prove(
            new DrainCase(
                one.field(),
                frame,
                one.catchments(),
                one.pieces().stream()
                    .map(p -> new Piece(p.id(), p.kind(), p.shape().transformed(frame), p.sealed()))
                    .toList(),
                one.ground()));
    assertThat(there.leaks()).hasSameSizeAs(here.leaks());
    for (int i = 0; i < here.leaks().size(); i++) {
      Leak leak = there.leaks().get(i);
      assertThat(leak.area()).isCloseTo(here.leaks().get(i).area(), within(1e-6));
      assertThat(leak.at().distance(frame.apply(here.leaks().get(i).at()))).isLessThan(1e-6);
      Vec3 corner = here.leaks().get(i).regions().get(0).get(0);
      assertThat(leak.regions().get(0).get(0).distance(frame.apply(corner))).isLessThan(1e-4);
    }
    StandingWater water = there.blocked().get(0);
    assertThat(water.at().distance(frame.apply(here.blocked().get(0).at()))).isLessThan(1e-4);
    assertThat(water.spillsAt().z()).isCloseTo(3.04, within(1e-6));
  }
}
