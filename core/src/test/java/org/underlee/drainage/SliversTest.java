package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The quick way of giving triangles without area away against the slow obvious one. */
class SliversTest {
  /** Again and again through all that are left, each with all faces, until none joins any. */
  private static void slowly(
      List<FaceOutline> faces, List<int[]> slivers, BiPredicate<FaceOutline, int[]> liesIn) {
    List<int[]> left = new ArrayList<>(slivers);
    while (left.removeIf(corners -> joins(faces, corners, liesIn))) {
      // another may border what this one has joined
    }
  }

  private static boolean joins(
      List<FaceOutline> faces, int[] corners, BiPredicate<FaceOutline, int[]> liesIn) {
    Optional<FaceOutline> most =
        faces.stream()
            .filter(f -> f.shared(corners) > 0 && liesIn.test(f, corners))
            .max(Comparator.comparingInt(f -> f.shared(corners)));
    most.ifPresent(f -> f.toggle(corners));
    return most.isPresent();
  }

  private static int[] triangle(Random random, int vertices) {
    return random.ints(3, 0, vertices).toArray();
  }

  /**
   * Few vertices, so that edges meet, are taken away and come back, and faces vie for triangles.
   */
  private static List<FaceOutline> faces(Random random, int vertices) {
    return Stream.generate(FaceOutline::new)
        .limit(1 + random.nextInt(5))
        .peek(
            face ->
                Stream.generate(() -> triangle(random, vertices))
                    .limit(random.nextInt(8))
                    .forEach(face::toggle))
        .toList();
  }

  private static List<List<FaceOutline.Edge>> edges(List<FaceOutline> faces) {
    return faces.stream().map(f -> List.copyOf(f.edges)).toList();
  }

  @Test
  void theQuickWayGivesEachTriangleToTheFaceThatTheSlowOneGivesItTo() {
    int changed = 0;
    for (int seed = 0; seed < 20_000; seed++) {
      int vertices = 4 + seed % 12;
      List<FaceOutline> quick = faces(new Random(seed), vertices);
      List<FaceOutline> slow = faces(new Random(seed), vertices);
      Random random = new Random(-seed);
      List<int[]> slivers =
          Stream.generate(() -> triangle(random, vertices)).limit(random.nextInt(30)).toList();
      List<List<FaceOutline.Edge>> before = edges(quick);
      int salt = random.nextInt();
      Slivers.giveAway(quick, slivers, (f, c) -> lies(quick.indexOf(f), c, salt));
      slowly(slow, slivers, (f, c) -> lies(slow.indexOf(f), c, salt));
      assertThat(edges(quick)).as("seed %s", seed).isEqualTo(edges(slow));
      changed += edges(quick).equals(before) ? 0 : 1;
    }
    assertThat(changed).isGreaterThan(10_000);
  }

  /** Three of four lie in a face, as chance has it. */
  private static boolean lies(int face, int[] corners, int salt) {
    return new Random(
                31L * (31L * (31L * (31L * face + corners[0]) + corners[1]) + corners[2]) + salt)
            .nextInt(4)
        > 0;
  }

  /** Each borders only the one behind it: the slow way goes through all of them for each. */
  @Test
  void aHundredThousandInTheWorstOrderAreGivenAwayInNearlyLinearTime() {
    int count = 100_000;
    FaceOutline face = new FaceOutline();
    face.toggle(new int[] {0, 1, -1});
    List<int[]> slivers = new ArrayList<>();
    for (int i = count; i > 0; i--) {
      slivers.add(i % 2 == 0 ? new int[] {i - 1, i, i + 1} : new int[] {i, i - 1, i + 1});
    }
    long[] tests = {0};
    Slivers.giveAway(List.of(face), slivers, (f, c) -> ++tests[0] > 0);
    assertThat(tests[0]).isLessThan(3L * count);
    assertThat(face.edges).hasSize(count + 3);
  }
}
