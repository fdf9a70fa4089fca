package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Mesh;

/** Standing water runs over where its rim is lowest and nearest, and the leak is told of there. */
class SpillPlaceTest {
  private static final double BRIM = 0.03;

  @Test
  void waterThatSpillsIsToldOfWhereItRunsOverAndNotAtAnotherEdgeOfTheRim() {
    // The rim uphill is met first, but it is wide, so the edge of the one downhill is nearer.
    Mesh tray =
        Mesh.union(
            List.of(
                ByHand.box(0, 0, -0.001, 0.4, 2, 0),
                ByHand.box(-0.3, 0, -0.001, 0, 2, BRIM),
                ByHand.box(0.4, 0, -0.001, 0.42, 2, BRIM),
                ByHand.box(-0.3, -0.01, -0.001, 0.42, 0, 2 * BRIM),
                ByHand.box(-0.3, 2, -0.001, 0.42, 2.01, 2 * BRIM)));
    DrainProof proof =
        new ByHand().put("tray", Piece.Kind.SHEET, tray).rainOn(0.1, 0.1, 0.3, 1.9).proof();
    assertThat(proof.leaks()).hasSize(1);
    Leak leak = proof.leaks().get(0);
    assertThat(leak.cause()).isEqualTo(LeakCause.SPILL);
    assertThat(leak.at().x()).isCloseTo(0.42, within(0.001));
    assertThat(proof.ponds()).hasSize(1);
    assertThat(proof.ponds().get(0).depth()).isCloseTo(BRIM, within(1e-6));
    assertThat(proof.ponds().get(0).spillsAt().x()).isCloseTo(0.42, within(0.001));
  }
}
