package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class BvhTest {
  private static Mesh soup(Random random, int triangles, double size) {
    double[] xyz = new double[9 * triangles];
    int[] corners = new int[3 * triangles];
    for (int t = 0; t < triangles; t++) {
      double[] middle = {random.nextDouble(), random.nextDouble(), random.nextDouble()};
      for (int i = 0; i < 9; i++) {
        xyz[9 * t + i] = middle[i % 3] + size * (random.nextDouble() - 0.5);
      }
    }
    for (int i = 0; i < corners.length; i++) {
      corners[i] = i;
    }
    return new Mesh(xyz, corners);
  }

  @Test
  void thePairsOfATreeAreThoseOfTryingAll() {
    int pairs = 0;
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      Mesh a = soup(random, 1 + random.nextInt(120), 0.4);
      Mesh b = soup(random, 1 + random.nextInt(120), 0.2);
      assertThat(Bvhs.pairs(a, b)).as("seed %s", seed).isEqualTo(SlowTriangles.meeting(a, b));
      assertThat(Bvh.of(a).meets(Bvh.of(b)))
          .as("seed %s", seed)
          .isEqualTo(!Bvhs.pairs(a, b).isEmpty());
      pairs += Bvhs.pairs(a, b).size();
    }
    assertThat(pairs).isGreaterThan(400);
  }

  /** On a grid of whole numbers, corners, edges and planes fall together all the time. */
  @Test
  void onAGridWhereEverythingTouchesThePairsAreThoseOfTryingAll() {
    int pairs = 0;
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      double[] far = {0, 1e6, -3e5};
      double[][] xyz = new double[2][9 * 30];
      for (double[] one : xyz) {
        for (int i = 0; i < one.length; i++) {
          one[i] = random.nextInt(4) + far[(seed + i) % 3 == 0 ? seed % 3 : 0] * 0.1;
        }
      }
      int[] corners = java.util.stream.IntStream.range(0, 90).toArray();
      Mesh a = new Mesh(xyz[0], corners);
      Mesh b = new Mesh(xyz[1], corners);
      assertThat(Bvhs.pairs(a, b)).as("seed %s", seed).isEqualTo(SlowTriangles.meeting(a, b));
      pairs += Bvhs.pairs(a, b).size();
    }
    assertThat(pairs).isGreaterThan(5000);
  }

  @Test
  void theDistanceIsThatOfTryingAllPairs() {
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      Mesh a = soup(random, 1 + random.nextInt(60), 0.1);
      Mesh b =
          soup(random, 1 + random.nextInt(60), 0.1)
              .transformed(Transform.translation(new Vec3(1.5, random.nextDouble(), 0)));
      double brute = Double.POSITIVE_INFINITY;
      for (int i = 0; i < a.triangleCount(); i++) {
        for (int j = 0; j < b.triangleCount(); j++) {
          brute = Math.min(brute, sampled(a, i, b, j));
        }
      }
      double found = Bvh.of(a).distance(Bvh.of(b), 10);
      assertThat(found).as("seed %s", seed).isLessThanOrEqualTo(brute + 1e-12);
      assertThat(found).isCloseTo(brute, within(0.02));
      assertThat(Bvh.of(b).distance(Bvh.of(a), 10)).isCloseTo(found, within(1e-12));
      assertThat(Bvh.of(a).distance(Bvh.of(b), found / 2)).isInfinite();
    }
  }

  /** Never less than the distance, and near it: the nearest of places spread over both. */
  private static double sampled(Mesh a, int i, Mesh b, int j) {
    int fine = 5;
    double least = Double.POSITIVE_INFINITY;
    for (int u = 0; u <= fine; u++) {
      for (int v = 0; u + v <= fine; v++) {
        Vec3 p = place(a, i, (double) u / fine, (double) v / fine);
        for (int s = 0; s <= fine; s++) {
          for (int t = 0; s + t <= fine; t++) {
            least = Math.min(least, p.distance(place(b, j, (double) s / fine, (double) t / fine)));
          }
        }
      }
    }
    return least;
  }

  private static Vec3 place(Mesh m, int t, double u, double v) {
    Vec3 a = m.point(t, 0);
    return a.plus(m.point(t, 1).minus(a).times(u)).plus(m.point(t, 2).minus(a).times(v));
  }

  @Test
  void aClosedSurfaceHoldsWhatIsInsideHoweverItIsTurned() {
    Random random = new Random(7);
    for (int i = 0; i < 200; i++) {
      Transform frame = Bodies.frame(random, 1000);
      Bvh box = Bvh.of(Bodies.box(2, 1, 0.5).transformed(frame));
      Vec3 local = new Vec3(random.nextDouble(), random.nextDouble(), random.nextDouble());
      Vec3 p = local.minus(new Vec3(0.5, 0.5, 0.5)).times(3);
      boolean inside = Math.abs(p.x()) < 1 && Math.abs(p.y()) < 0.5 && Math.abs(p.z()) < 0.25;
      assertThat(box.holds(frame.apply(p))).isEqualTo(inside);
    }
  }

  /**
   * Eight times the triangles take about nine times the time; trying every pair would take
   * sixty-four times. A coarse guard: {@code docs/benchmarks/clash.md} has the measured exponent.
   */
  @Test
  void theTimeGrowsHardlyFasterThanTheNumberOfTriangles() {
    BvhSpeed.seconds(5_000, 3);
    double[] sizes = {5_000, 10_000, 20_000, 40_000};
    double[] seconds = new double[sizes.length];
    for (int i = 0; i < sizes.length; i++) {
      seconds[i] = BvhSpeed.seconds((int) sizes[i], 3);
    }
    assertThat(BvhSpeed.exponent(sizes, seconds)).isLessThan(1.5);
  }
}
