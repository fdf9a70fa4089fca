package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.drainage.ByHand.box;
import static org.underlee.drainage.ByHand.sheet;
import static org.underlee.drainage.ByHand.wedge;

import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec3;

/** Depths and volumes of standing water in trays of boxes, worked out on paper. */
class PondsByHandTest {
  private static final Offset<Double> NEAR = within(1e-6);

  /** A tenth of a sheet's thickness, 50 mm deep along a few metres of rim. */
  private static final Offset<Double> STRIP = within(1e-4);

  /**
   * A basin of 1 m with its floor at 0, a ridge of 100 mm whose top falls from 20 to 18 mm, a basin
   * of 0.9 m whose floor falls from 0 to −9 mm, and a rim beyond it; all others are at 100 mm. All
   * is 1 m wide.
   */
  private static ByHand twoBasins(double rim) {
    Mesh tray =
        Mesh.union(
            List.of(
                box(-0.01, 0, -0.02, 0, 1, 0.1),
                box(0, 0, -0.02, 1, 1, 0),
                wedge(Outline.rectangle(1, 0, 1.1, 1), 0.04, -0.02, 0, 0.03),
                sheet(1.1, 0, 2, 1, 0.011, -0.01),
                box(2, 0, -0.02, 2.01, 1, rim),
                box(-0.01, -0.01, -0.02, 2.01, 0, 0.1),
                box(-0.01, 1, -0.02, 2.01, 1.01, 0.1)));
    return new ByHand().put("tray", Kind.SHEET, tray).rainOn(0, 0, 1, 1);
  }

  @Test
  void eachBasinIsFullToTheSillThatItRunsOver() {
    DrainProof proof = twoBasins(0.01).proof();
    assertThat(proof.ponds()).hasSize(2);
    StandingWater upper =
        proof.ponds().stream().filter(p -> p.at().x() < 1.05).findFirst().orElseThrow();
    assertThat(upper.depth()).isCloseTo(0.02, NEAR);
    assertThat(upper.volume()).isCloseTo(0.02, STRIP);
    assertThat(upper.area()).isCloseTo(1, STRIP);
    assertThat(upper.spillsAt().x()).isBetween(1 - 1e-4, 1.1 + 1e-4);
    StandingWater lower =
        proof.ponds().stream().filter(p -> p.at().x() > 1.05).findFirst().orElseThrow();
    assertThat(lower.depth()).isCloseTo(0.019, NEAR);
    // 0.9 m long, 14.5 mm deep in the mean
    assertThat(lower.volume()).isCloseTo(0.01305, STRIP);
    assertThat(lower.spillsAt().x()).isBetween(2 - 1e-4, 2.01 + 1e-4);
    assertThat(lower.spillsTo()).isEqualTo(LeakCause.SPILL.why() + ": tray");
    assertThat(proof.leaks()).hasSize(1);
    assertThat(proof.leaks().get(0).cause()).isEqualTo(LeakCause.SPILL);
    assertThat(proof.leaks().get(0).area()).isCloseTo(1, STRIP);
  }

  /** 1 m by 50 mm, 0.1 m by 31 mm and 0.9 m by 54.5 mm in the mean. */
  @Test
  void basinsThatSpillIntoEachOtherAreOnePond() {
    List<StandingWater> ponds = twoBasins(0.05).proof().ponds();
    StandingWater all =
        ponds.stream().max(java.util.Comparator.comparing(StandingWater::volume)).orElseThrow();
    assertThat(all.volume()).isCloseTo(0.10215, STRIP);
    assertThat(all.depth()).isCloseTo(0.059, NEAR);
    assertThat(all.area()).isCloseTo(2, STRIP);
    assertThat(all.mass()).isCloseTo(102.15, within(0.1));
    assertThat(all.at().z()).isCloseTo(-0.009, NEAR);
    assertThat(all.spillsAt().z()).isCloseTo(0.05, NEAR);
  }

  @Test
  void aPondUnderTwoBaysIsToldOnce() {
    DrainProof proof =
        new ByHand()
            .put("tray", Kind.SHEET, Mesh.union(tray(0.05)))
            .bay("B1", ByHand.ring(0, 0, 1, 0.4))
            .bay("B2", ByHand.ring(0, 0.4, 1, 1))
            .proof();
    assertThat(proof.ponds()).hasSize(1);
    assertThat(proof.ponds().get(0).volume()).isCloseTo(0.05, STRIP);
    assertThat(proof.leaks().stream().mapToDouble(Leak::area).sum()).isCloseTo(1, NEAR);
  }

  /** Surface tension holds 3 mm. */
  @Test
  void aFilmIsNoPond() {
    Mesh deep = Mesh.union(tray(0.0031));
    Mesh film = Mesh.union(tray(0.0029));
    assertThat(new ByHand().put("t", Kind.SHEET, deep).rainOn(0, 0, 1, 1).proof().ponds())
        .hasSize(1);
    assertThat(new ByHand().put("t", Kind.SHEET, film).rainOn(0, 0, 1, 1).proof().ponds())
        .isEmpty();
  }

  /** One of four rims is at 20 mm, on the side that is looked at, the others at 50 mm. */
  @ParameterizedTest
  @CsvSource({"-1, 0", "1, 0", "0, -1", "0, 1"})
  void waterRunsOverTheLowestRimWhicheverSideItIsOn(int x, int y) {
    Mesh tray =
        Mesh.union(
            List.of(
                box(0, 0, -0.01, 1, 1, 0),
                box(-0.01, 0, -0.01, 0, 1, x < 0 ? 0.02 : 0.05),
                box(1, 0, -0.01, 1.01, 1, x > 0 ? 0.02 : 0.05),
                box(0, -0.01, -0.01, 1, 0, y < 0 ? 0.02 : 0.05),
                box(0, 1, -0.01, 1, 1.01, y > 0 ? 0.02 : 0.05)));
    List<StandingWater> ponds =
        new ByHand().put("tray", Kind.SHEET, tray).rainOn(0, 0, 1, 1).proof().ponds();
    assertThat(ponds).hasSize(1);
    assertThat(ponds.get(0).depth()).isCloseTo(0.02, NEAR);
    Vec3 spill = ponds.get(0).spillsAt();
    double outside = 0.5 + 0.505;
    assertThat(x == 0 ? spill.y() : spill.x())
        .isCloseTo(x + y > 0 ? outside : 1 - outside, within(0.006));
  }

  /** The floor falls 1:100 both ways, from 0 in the middle of its plan to −10 mm at one corner. */
  @ParameterizedTest
  @CsvSource({"-1, -1", "1, -1", "-1, 1", "1, 1"})
  void waterIsDeepestInTheLowestCorner(int x, int y) {
    List<Mesh> all = new ArrayList<>(tray(0.05));
    double middle = 0.005 * (x + y);
    all.set(0, wedge(Outline.rectangle(0, 0, 1, 1), middle, -0.01 * x, -0.01 * y, 0.001));
    List<StandingWater> ponds =
        new ByHand().put("tray", Kind.SHEET, Mesh.union(all)).rainOn(0, 0, 1, 1).proof().ponds();
    assertThat(ponds).hasSize(1);
    assertThat(ponds.get(0).at().distance(new Vec3(x > 0 ? 1 : 0, y > 0 ? 1 : 0, -0.01)))
        .isLessThan(1e-4);
    assertThat(ponds.get(0).depth()).isCloseTo(0.06, NEAR);
    assertThat(ponds.get(0).volume()).isCloseTo(0.05, STRIP);
  }

  /**
   * A basin of 1 m with its floor at 0, a level ridge of 100 mm at 20 mm, a basin of 0.9 m with its
   * floor at {@code floor}, and a rim beyond it; all others are at 100 mm. All is 1 m wide.
   */
  private static List<StandingWater> besideALevelRidge(double floor, double rim) {
    Mesh tray =
        Mesh.union(
            List.of(
                box(-0.01, 0, -0.02, 0, 1, 0.1),
                box(0, 0, -0.02, 1, 1, 0),
                box(1, 0, -0.02, 1.1, 1, 0.02),
                box(1.1, 0, -0.02, 2, 1, floor),
                box(2, 0, -0.02, 2.01, 1, rim),
                box(-0.01, -0.01, -0.02, 2.01, 0, 0.1),
                box(-0.01, 1, -0.02, 2.01, 1.01, 0.1)));
    return new ByHand().put("tray", Kind.SHEET, tray).rainOn(0, 0, 2, 1).proof().ponds();
  }

  /** The upper one holds 20 mm on 1 m², the lower one 10 mm from its floor up on 0.9 m². */
  @ParameterizedTest
  @CsvSource({"0", "-0.009", "0.005"})
  void behindALevelRidgeWaterStandsNoHigherThanItsOwnRim(double floor) {
    List<StandingWater> ponds = besideALevelRidge(floor, floor + 0.01);
    assertThat(ponds).hasSize(2);
    StandingWater upper = pond(ponds, 0);
    assertThat(upper.depth()).isCloseTo(0.02, NEAR);
    assertThat(upper.volume()).isCloseTo(0.02, NEAR);
    assertThat(upper.area()).isCloseTo(1, NEAR);
    StandingWater lower = pond(ponds, 1.1);
    assertThat(lower.depth()).isCloseTo(0.01, NEAR);
    assertThat(lower.volume()).isCloseTo(0.009, NEAR);
    assertThat(lower.area()).isCloseTo(0.9, NEAR);
    assertThat(lower.spillsAt().z()).isCloseTo(floor + 0.01, NEAR);
  }

  /** 50 mm on 1 m², 30 mm on the ridge's 0.1 m², 50 mm on 0.9 m². */
  @Test
  void aLevelRidgeBelowTheRimIsUnderWater() {
    StandingWater all = largest(besideALevelRidge(0, 0.05));
    assertThat(all.depth()).isCloseTo(0.05, NEAR);
    assertThat(all.volume()).isCloseTo(0.05 + 0.003 + 0.045, NEAR);
    assertThat(all.area()).isCloseTo(2, NEAR);
  }

  private static StandingWater pond(List<StandingWater> ponds, double from) {
    return ponds.stream()
        .filter(p -> p.at().x() >= from && p.at().x() <= from + 1)
        .findFirst()
        .orElseThrow();
  }

  private static StandingWater largest(List<StandingWater> ponds) {
    return ponds.stream().max(java.util.Comparator.comparing(StandingWater::volume)).orElseThrow();
  }

  /**
   * A floor of 1 m that falls 1:50 along and not across, with a rim of 12 mm at its foot: wet for
   * 0.6 m, 12 mm deep at the foot.
   */
  @Test
  void ofAFloorThatIsPartlyWetTheWetPartCounts() {
    List<Mesh> all = new ArrayList<>(tray(0.05));
    all.set(0, wedge(Outline.rectangle(0, 0, 1, 1), 0.02, -0.02, 0, 0.001));
    all.set(2, box(1, 0, -0.02, 1.01, 1, 0.012));
    List<StandingWater> ponds =
        new ByHand().put("tray", Kind.SHEET, Mesh.union(all)).rainOn(0, 0, 1, 1).proof().ponds();
    assertThat(ponds).hasSize(1);
    assertThat(ponds.get(0).depth()).isCloseTo(0.012, NEAR);
    assertThat(ponds.get(0).area()).isCloseTo(0.6, NEAR);
    assertThat(ponds.get(0).volume()).isCloseTo(0.6 * 0.012 / 2, NEAR);
  }

  private static List<Mesh> tray(double rim) {
    return List.of(
        box(0, 0, -0.01, 1, 1, 0),
        box(-0.01, 0, -0.01, 0, 1, rim),
        box(1, 0, -0.01, 1.01, 1, rim),
        box(-0.01, -0.01, -0.01, 1.01, 0, rim),
        box(-0.01, 1, -0.01, 1.01, 1.01, rim));
  }
}
