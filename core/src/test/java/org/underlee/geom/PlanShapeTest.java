package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlanShapeTest {
  /**
   * Against sampling: points of the convex hull are mixtures of the given ones, so a cut is about
   * where mixtures of two points, one on each side, cross the line.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void aCutIsWhereTheSegmentsBetweenAllPairsOfPointsReach(long seed) {
    Random random = new Random(seed);
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      points.add(new Vec3(random.nextGaussian(), 3 * random.nextGaussian(), random.nextGaussian()));
    }
    PlanShape shape = PlanShape.of(points);
    for (double at = -0.9; at <= 0.9; at += 0.3) {
      Interval slow = reach(points, at);
      Interval fast = shape.alongAt(at);
      assertThat(fast.from()).isCloseTo(slow.from(), within(1e-9));
      assertThat(fast.to()).isCloseTo(slow.to(), within(1e-9));
      List<Vec3> turned = points.stream().map(p -> new Vec3(p.y(), p.x(), p.z())).toList();
      Interval across = PlanShape.of(turned).acrossAt(at);
      assertThat(across.from()).isCloseTo(slow.from(), within(1e-9));
      assertThat(across.to()).isCloseTo(slow.to(), within(1e-9));
    }
  }

  private static Interval reach(List<Vec3> points, double x) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Vec3 a : points) {
      for (Vec3 b : points) {
        if (a.x() <= x && b.x() > x) {
          double y = a.y() + (b.y() - a.y()) * (x - a.x()) / (b.x() - a.x());
          low = Math.min(low, y);
          high = Math.max(high, y);
        }
      }
    }
    return new Interval(low, high);
  }

  @Test
  void aBoxIsCutOnItsFacesAndNotBesideIt() {
    PlanShape box =
        PlanShape.of(
            Extrusion.straight(Transform.IDENTITY, Outline.rectangle(1, 2, 3, 7), 0.5).mesh(),
            Transform.IDENTITY);
    assertThat(box.alongAt(2)).isEqualTo(new Interval(2, 7));
    assertThat(box.alongAt(1)).isEqualTo(new Interval(2, 7));
    assertThat(box.acrossAt(7)).isEqualTo(new Interval(1, 3));
    assertThat(box.alongAt(0.9).isEmpty()).isTrue();
    assertThat(box.across()).isEqualTo(new Interval(1, 3));
    assertThat(box.along()).isEqualTo(new Interval(2, 7));
    assertThat(box.heights()).isEqualTo(new Interval(0, 0.5));
  }
}
