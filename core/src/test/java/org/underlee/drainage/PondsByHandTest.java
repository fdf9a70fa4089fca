package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.drainage.ByHand.box;
import static org.underlee.drainage.ByHand.sheet;
import static org.underlee.drainage.ByHand.wedge;

import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;

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

  private static List<Mesh> tray(double rim) {
    return List.of(
        box(0, 0, -0.01, 1, 1, 0),
        box(-0.01, 0, -0.01, 0, 1, rim),
        box(1, 0, -0.01, 1.01, 1, rim),
        box(-0.01, -0.01, -0.01, 1.01, 0, rim),
        box(-0.01, 1, -0.01, 1.01, 1.01, rim));
  }
}
