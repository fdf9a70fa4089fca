package org.underlee.ifc.shape;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Found as seed 3202 of the damaged models: a beam whose lengths had lost their unit. */
class CutWorkTest {
  @Test
  void allCutsOfABodyCountTogetherAndNoneIsAllowedPastTheLimit() {
    CutWork work = new CutWork();
    assertThatCode(() -> work.cut((int) CutWork.MAX_STEPS, 1)).doesNotThrowAnyException();
    assertThatThrownBy(() -> work.cut(1, 1)).isInstanceOf(CutWork.TooMuch.class);
  }
}
