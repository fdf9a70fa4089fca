package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Bars of known size, in any place and cut into any triangles. */
class BarMeasureTest {
  /** A hundredth of a millimetre. */
  private static final double HUNDREDTH = 1e-5;

  private static final double WIDTH = 0.0381;
  private static final double DEPTH = 0.18415;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void aBarIsMeasuredInAnyDirection(long seed) {
    Random random = new Random(seed);
    double length = 0.5 + 5 * random.nextDouble();
    Transform place = anywhere(random, 100);
    Mesh bar = split(rectangular(WIDTH, DEPTH, length).transformed(place), random);
    OrientedBox box = BarMeasure.of(bar).orElseThrow();
    assertThat(Math.abs(box.axis().dot(place.z()))).isCloseTo(1, within(1e-10));
    assertThat(box.length()).isCloseTo(length, within(HUNDREDTH));
    assertSection(box, WIDTH, DEPTH);
    assertThat(box.centre().distance(place.apply(new Vec3(0, 0, length / 2))))
        .isLessThan(HUNDREDTH);
  }

  /** The magnitude's own rounding is 2⁻⁵³ of it: 1.9 nm at 10⁷ m; ten thousand times that holds. */
  @ParameterizedTest
  @CsvSource({"1e3,1e-9", "1e5,1e-7", "1e7,2e-5"})
  void aBarFarFromTheOriginIsMeasuredToTheStatedTolerance(double distance, double tolerance) {
    for (long seed = 1; seed <= 10; seed++) {
      Random random = new Random(seed);
      Transform place = anywhere(random, distance);
      OrientedBox box =
          BarMeasure.of(rectangular(WIDTH, DEPTH, 3).transformed(place)).orElseThrow();
      assertThat(box.length()).isCloseTo(3, within(tolerance));
      double[] section = {box.width(), box.depth()};
      Arrays.sort(section);
      assertThat(section[0]).isCloseTo(WIDTH, within(tolerance));
      assertThat(section[1]).isCloseTo(DEPTH, within(tolerance));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void aLevelJoistHasItsDepthUpAndItsWidthAcross(long seed) {
    Random random = new Random(seed);
    double turn = random.nextDouble() * Math.PI;
    Vec3 along = new Vec3(Math.cos(turn), Math.sin(turn), 0);
    Transform place = new Transform(new Vec3(3, 4, 5), along.cross(Vec3.Z), Vec3.Z, along);
    OrientedBox box = BarMeasure.of(rectangular(WIDTH, DEPTH, 3).transformed(place)).orElseThrow();
    assertThat(box.width()).isCloseTo(WIDTH, within(1e-9));
    assertThat(box.depth()).isCloseTo(DEPTH, within(1e-9));
    assertThat(Math.abs(box.up().z())).isCloseTo(1, within(1e-9));
    assertThat(box.top() - box.bottom()).isCloseTo(DEPTH, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void endsCutAtAnAngleKeepTheAxisAndTheSection(long seed) {
    Random random = new Random(seed);
    Transform place = anywhere(random, 20);
    double bevel = 0.02 + 0.1 * random.nextDouble();
    // the side view of the bar, swept across it: a trapezium, as a joist with bevelled ends
    Outline side =
        Outline.of(
            List.of(
                new Vec2(0, 0),
                new Vec2(3, 0),
                new Vec2(3 - bevel, DEPTH),
                new Vec2(bevel / 2, DEPTH)));
    Mesh bar = Extrusion.straight(Transform.IDENTITY, side, WIDTH).mesh().transformed(place);
    OrientedBox box = BarMeasure.of(split(bar, random)).orElseThrow();
    assertThat(Math.abs(box.axis().dot(place.x()))).isCloseTo(1, within(1e-10));
    assertThat(box.length()).isCloseTo(3, within(HUNDREDTH));
    assertSection(box, WIDTH, DEPTH);
  }

  /** A rolled section 102 × 203 mm, 7 mm web, 10 mm flanges. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void anISectionIsAsWideAndDeepAsItsFlanges(long seed) {
    Random random = new Random(seed);
    Transform place = anywhere(random, 20);
    double b = 0.051;
    double h = 0.1015;
    double w = 0.0035;
    double f = h - 0.010;
    List<Vec2> ring =
        List.of(
            new Vec2(-b, -h),
            new Vec2(b, -h),
            new Vec2(b, -f),
            new Vec2(w, -f),
            new Vec2(w, f),
            new Vec2(b, f),
            new Vec2(b, h),
            new Vec2(-b, h),
            new Vec2(-b, f),
            new Vec2(-w, f),
            new Vec2(-w, -f),
            new Vec2(-b, -f));
    Mesh bar = Extrusion.straight(Transform.IDENTITY, Outline.of(ring), 4).mesh();
    OrientedBox box = BarMeasure.of(split(bar.transformed(place), random)).orElseThrow();
    assertThat(Math.abs(box.axis().dot(place.z()))).isCloseTo(1, within(1e-10));
    assertThat(box.length()).isCloseTo(4, within(HUNDREDTH));
    assertSection(box, 0.102, 0.203);
  }

  /** A polygon of n sides around a circle is at most 1/cos(π/n) of it wide: 1.1 % for 24. */
  @ParameterizedTest
  @CsvSource({"12,0.036", "24,0.009", "48,0.003", "100,0.001", "300,0.001"})
  void aRoundBarIsAsThickAsItsFacetsAllow(int sides, double share) {
    for (long seed = 1; seed <= 5; seed++) {
      Random random = new Random(seed);
      Transform place = anywhere(random, 20);
      Outline round = Outline.of(Outline.circle(0, 0, 0.05, sides));
      Mesh pipe = Extrusion.straight(Transform.IDENTITY, round, 2).mesh().transformed(place);
      OrientedBox box = BarMeasure.of(pipe).orElseThrow();
      assertThat(Math.abs(box.axis().dot(place.z()))).isCloseTo(1, within(1e-9));
      assertThat(box.length()).isCloseTo(2, within(HUNDREDTH));
      assertThat(box.width()).isCloseTo(0.1, within(0.1 * share));
      assertThat(box.depth()).isCloseTo(0.1, within(0.1 * share));
    }
  }

  @Test
  void whatIsFlatOrEmptyIsNoBar() {
    assertThat(BarMeasure.of(Mesh.EMPTY)).isEmpty();
    Mesh sheet =
        new Mesh(
            new double[] {0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 0.5, 0.5, 0},
            new int[] {0, 1, 4, 1, 2, 4, 2, 3, 4, 3, 0, 4});
    assertThat(BarMeasure.of(sheet)).isEmpty();
  }

  @Test
  void theOrderOfTrianglesAndTheirFirstCornersPlayNoPart() {
    Random random = new Random(9);
    Mesh bar = rectangular(WIDTH, DEPTH, 3).transformed(anywhere(random, 10));
    OrientedBox straight = BarMeasure.of(bar).orElseThrow();
    for (int i = 0; i < 10; i++) {
      OrientedBox mixed = BarMeasure.of(shuffled(bar, random)).orElseThrow();
      assertThat(mixed.length()).isCloseTo(straight.length(), within(1e-9));
      assertThat(mixed.width()).isCloseTo(straight.width(), within(1e-9));
      assertThat(mixed.centre().distance(straight.centre())).isLessThan(1e-9);
    }
  }

  private static void assertSection(OrientedBox box, double small, double large) {
    double[] sides = {box.width(), box.depth()};
    Arrays.sort(sides);
    assertThat(sides[0]).isCloseTo(small, within(HUNDREDTH));
    assertThat(sides[1]).isCloseTo(large, within(HUNDREDTH));
  }

  private static Mesh rectangular(double width, double depth, double length) {
    Outline section = Outline.rectangle(-width / 2, -depth / 2, width / 2, depth / 2);
    return Extrusion.straight(Transform.IDENTITY, section, length).mesh();
  }

  private static Transform anywhere(Random random, double distance) {
    Vec3 far = direction(random).times(distance);
    return Transform.frame(far, direction(random), direction(random));
  }

  private static Vec3 direction(Random random) {
    return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
  }

  /** Each triangle cut in three at a point inside it, without sharing vertices, in any order. */
  private static Mesh split(Mesh mesh, Random random) {
    List<Vec3> soup = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 a = mesh.point(t, 0);
      Vec3 b = mesh.point(t, 1);
      Vec3 c = mesh.point(t, 2);
      Vec3 m = a.plus(b).plus(c).times(1.0 / 3);
      soup.addAll(random.nextBoolean() ? List.of(a, b, m, b, c, m, c, a, m) : List.of(a, b, c));
    }
    return shuffled(ofCorners(soup), random);
  }

  private static Mesh shuffled(Mesh mesh, Random random) {
    List<List<Vec3>> faces = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      List<Vec3> face =
          new ArrayList<>(List.of(mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2)));
      Collections.rotate(face, random.nextInt(3));
      faces.add(face);
    }
    Collections.shuffle(faces, random);
    return ofCorners(faces.stream().flatMap(List::stream).toList());
  }

  private static Mesh ofCorners(List<Vec3> corners) {
    double[] xyz = new double[3 * corners.size()];
    int[] faces = new int[corners.size()];
    for (int i = 0; i < faces.length; i++) {
      xyz[3 * i] = corners.get(i).x();
      xyz[3 * i + 1] = corners.get(i).y();
      xyz[3 * i + 2] = corners.get(i).z();
      faces[i] = i;
    }
    return new Mesh(xyz, faces);
  }
}
