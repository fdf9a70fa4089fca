package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ProofSpeedTest {
  /**
   * Far above what it takes on a quiet machine: a guard against growth by the square of the bays.
   */
  private static final double MOST_SECONDS = 5;

  @Test
  void twoHundredBaysAreProvedInAMoment() {
    List<DrainCase> cases = ProofSpeed.cases(200);
    double best = Double.MAX_VALUE;
    DrainProof proof = WaterProver.prove(cases);
    for (int i = 0; i < 4; i++) {
      long start = System.nanoTime();
      proof = WaterProver.prove(cases);
      best = Math.min(best, (System.nanoTime() - start) / 1e9);
    }
    assertThat(proof.outlets().stream().mapToInt(o -> o.bays().size()).sum()).isGreaterThan(190);
    assertThat(best).isLessThan(MOST_SECONDS);
  }
}
