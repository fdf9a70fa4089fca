package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Mesh;

/**
 * Found as seed 1,006,276 of the damaged models: lengths that had lost their unit made each of 34
 * bars as thick as a tower, too round for the memory.
 */
class RoomTest {
  /** Three corners of 24 bytes and three numbers of 4. */
  private static final int BYTES = 84;

  private static BuildingElement triangle() {
    Mesh mesh = new Mesh(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, new int[] {0, 1, 2});
    return new BuildingElement(7, "", "IfcBeam", "", "", "", Optional.empty(), mesh);
  }

  @Test
  void bodiesThatFitTogetherAreKeptAndOneMoreIsRefusedWithAdvice() {
    Room room = Room.of("bars.ifc", 2 * BYTES);
    assertThatCode(() -> room.take(triangle())).doesNotThrowAnyException();
    assertThatCode(() -> room.take(triangle())).doesNotThrowAnyException();
    assertThatThrownBy(() -> room.take(triangle()))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("bars.ifc: the bodies of its elements take more than")
        .extracting(e -> ((InputException) e).advice())
        .asString()
        .contains("-Xmx8g");
  }
}
