package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class TriangulationTest {
  private static final int TEETH = 1000;

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

  /** Found by damaging models, as seeds 1025654 and 1515268: JTS went round it for ever. */
  @Test
  @Timeout(30)
  void aRingThatRunsOverItselfSoThatNoCornerIsAnEarIsRefused() {
    List<Vec2> six = List.of(at(3, 3), at(3, 1), at(1, 1), at(3, 2), at(3, 0), at(2, 1));
    assertThatThrownBy(() -> Triangulation.of(Outline.of(six)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("runs over itself");
    List<Vec2> nine =
        List.of(
            at(2, 1), at(3, 2), at(1, 2), at(1, 0), at(3, 0), at(3, 1), at(2, 2), at(0, 2),
            at(2, 0));
    assertThatThrownBy(() -> Triangulation.of(Outline.of(nine)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** A comb whose teeth are looked at again and again: the most work that a sound ring made. */
  @Test
  void aSoundRingOfManyCornersIsCutWhateverItTakes() {
    List<Vec2> comb = new ArrayList<>(List.of(at(0, 0), at(TEETH, 0)));
    for (int i = TEETH; i > 0; i--) {
      comb.addAll(List.of(at(i, 10), at(i - 0.5, 1)));
    }
    comb.add(at(0, 10));
    Triangulation cut = Triangulation.of(Outline.of(comb));
    assertThat(cut.triangles()).hasSize(comb.size() - 2);
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
