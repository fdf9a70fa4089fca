package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutlineTest {
  private static final List<Vec2> SQUARE =
      List.of(new Vec2(0, 0), new Vec2(4, 0), new Vec2(4, 4), new Vec2(0, 4));

  @Test
  void ringsAreWoundAsTheyMustBeWhateverWayTheyAreGiven() {
    List<Vec2> hole = List.of(new Vec2(1, 1), new Vec2(2, 1), new Vec2(2, 2), new Vec2(1, 2));
    Outline a = new Outline(SQUARE, List.of(hole));
    Outline b = new Outline(reversed(SQUARE), List.of(reversed(hole)));
    assertThat(a.area()).isEqualTo(15);
    assertThat(b.area()).isEqualTo(15);
    assertThat(Outline.signedArea(b.outer())).isPositive();
    assertThat(Outline.signedArea(b.holes().get(0))).isNegative();
  }

  @Test
  void aRingOfTwoPointsIsRefused() {
    assertThatThrownBy(() -> Outline.of(SQUARE.subList(0, 2)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("three points");
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 12, 24, 64})
  void aCirclesPolygonHasTheAreaOfTheCircle(int sides) {
    assertThat(Outline.of(Outline.circle(3, -2, 0.05, sides)).area())
        .isCloseTo(Math.PI * 0.05 * 0.05, within(1e-15));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void trianglesFillTheOutlineAndLeaveTheHolesOpen(long seed) {
    Random random = new Random(seed);
    Outline outline = starWithHoles(random, 5 + random.nextInt(20), random.nextInt(4));
    Triangulation cut = Triangulation.of(outline);
    double sum = 0;
    for (int[] t : cut.triangles()) {
      Vec2 a = cut.points().get(t[0]);
      double twice = cut.points().get(t[1]).minus(a).cross(cut.points().get(t[2]).minus(a));
      assertThat(twice).isGreaterThanOrEqualTo(0);
      sum += twice / 2;
    }
    assertThat(sum).isCloseTo(outline.area(), within(1e-9));
    int points = outline.outer().size() + outline.holes().stream().mapToInt(List::size).sum();
    assertThat(cut.points()).hasSize(points);
  }

  /** A star around the origin with square holes near its middle that do not meet. */
  static Outline starWithHoles(Random random, int points, int holes) {
    List<Vec2> outer = new ArrayList<>();
    for (int i = 0; i < points; i++) {
      double angle = 2 * Math.PI * i / points;
      double radius = 3 + 3 * random.nextDouble();
      outer.add(new Vec2(radius * Math.cos(angle), radius * Math.sin(angle)));
    }
    List<List<Vec2>> cut = new ArrayList<>();
    for (int i = 0; i < holes; i++) {
      double x = -1 + i * 0.6;
      double size = 0.1 + 0.3 * random.nextDouble();
      double y = random.nextDouble() * 0.4;
      cut.add(
          List.of(
              new Vec2(x, y),
              new Vec2(x + size, y),
              new Vec2(x + size, y + size),
              new Vec2(x, y + size)));
    }
    return new Outline(outer, cut);
  }

  private static List<Vec2> reversed(List<Vec2> ring) {
    List<Vec2> turned = new ArrayList<>(ring);
    java.util.Collections.reverse(turned);
    return turned;
  }
}
