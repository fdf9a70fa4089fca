package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TriangulationTest {
  /** Found by damaging models, as seeds 81134 and 517225: JTS fell over its own list. */
  @Test
  void aHoleThatLeavesItsRegionIsRefused() {
    List<Vec2> outer = List.of(at(0, 0), at(0, 1820), at(-2990, 1820), at(-2990, 0));
    List<Vec2> hole = List.of(at(-2930, 1760), at(-60, 1760), at(-60, 60), at(-3030, 60));
    Outline outline = new Outline(outer, List.of(hole));
    assertThatThrownBy(() -> Triangulation.of(outline))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("rings");
  }

  @Test
  void placesOnAGridHaveHashesOfTheirOwn() {
    Set<Integer> low = new HashSet<>();
    for (int x = 0; x < 32; x++) {
      for (int y = 0; y < 32; y++) {
        low.add(new Vec3(x * 0.5, y * 100.0, 3).hashCode() & 0xFFFF);
      }
    }
    // By chance 1,024 of 65,536 values would meet in about 8.
    assertThat(low).hasSizeGreaterThan(1000);
  }

  private static Vec2 at(double x, double y) {
    return new Vec2(x, y);
  }
}
