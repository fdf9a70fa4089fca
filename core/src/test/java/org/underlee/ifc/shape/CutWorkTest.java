package org.underlee.ifc.shape;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.underlee.geom.Mesh;

/** Found as seed 3202 of the damaged models: a beam whose lengths had lost their unit. */
class CutWorkTest {
  private static final Mesh TRIANGLE =
      new Mesh(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, new int[] {0, 1, 2});

  @Test
  void allCutsOfABodyCountTogetherAndNoneIsAllowedPastTheLimit() {
    CutWork work = new CutWork();
    assertThatCode(() -> work.cut(TRIANGLE, (int) CutWork.MAX_STEPS)).doesNotThrowAnyException();
    assertThatThrownBy(() -> work.cut(TRIANGLE, 1)).isInstanceOf(CutWork.TooMuch.class);
  }
}
