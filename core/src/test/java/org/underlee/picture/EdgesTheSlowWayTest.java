package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.geom.Mesh;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** Tables of numbers find the same lines as looking at every pair of vertices and of sides. */
class EdgesTheSlowWayTest {
  private static final int SEEDS = 60;

  static IntStream seeds() {
    return IntStream.range(0, SEEDS);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void placesAreThoseThatEveryPairOfVerticesGives(int seed) {
    Mesh mesh = heap(new Random(seed));
    double same = tolerance(mesh);
    int[] places = new Weld().firstAtPlace(mesh, same);
    List<Integer> firsts = new ArrayList<>();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vec3 p = mesh.vertex(v);
      int own = v;
      int slow =
          firsts.stream()
              .filter(f -> mesh.vertex(f).distance(p) <= same)
              .findFirst()
              .orElseGet(() -> own);
      if (slow == v) {
        firsts.add(v);
      }
      assertThat(places[v]).as("vertex %d of seed %d", v, seed).isEqualTo(slow);
    }
    assertThat(firsts).hasSizeLessThan(mesh.vertexCount());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void sidesAreThoseOfAMapOfPairs(int seed) {
    Mesh mesh = heap(new Random(seed));
    Map<List<Integer>, List<Integer>> slow = slowSides(mesh);
    Sides fast = new Sides();
    fast.find(mesh, tolerance(mesh));
    assertThat(fast.count()).isEqualTo(slow.size());
    int s = 0;
    for (Map.Entry<List<Integer>, List<Integer>> side : slow.entrySet()) {
      FeatureEdges.Edge edge = fast.edge(s, true);
      assertThat(List.of(Math.min(edge.from(), edge.to()), Math.max(edge.from(), edge.to())))
          .isEqualTo(side.getKey());
      assertThat(fast.uses(s)).isEqualTo(side.getValue().size());
      assertThat(edge.faceA()).isEqualTo(side.getValue().get(0));
      assertThat(edge.faceB())
          .isEqualTo(side.getValue().size() > 1 ? side.getValue().get(1) : FeatureEdges.NO_FACE);
      boolean turned =
          edge.faceB() != FeatureEdges.NO_FACE
              && runs(mesh, edge.faceA(), edge) != runs(mesh, edge.faceB(), edge);
      assertThat(fast.isOpposite(s)).isEqualTo(turned);
      s++;
    }
  }

  @Test
  void tablesThatServedOtherMeshesFindTheSame() {
    Sides used = new Sides();
    Random random = new Random(20);
    for (int seed = 0; seed < SEEDS; seed++) {
      Mesh mesh =
          random.nextBoolean() ? heap(new Random(seed)) : loose(DemoDeck.block(0, 0, 0, 1, 2, 3));
      assertThat(edges(FeatureEdges.of(mesh, used))).isEqualTo(edges(FeatureEdges.of(mesh)));
    }
  }

  private static List<FeatureEdges.Edge> edges(FeatureEdges features) {
    return IntStream.range(0, features.count()).mapToObj(features::edge).toList();
  }

  private static Map<List<Integer>, List<Integer>> slowSides(Mesh mesh) {
    int[] place = new Weld().firstAtPlace(mesh, tolerance(mesh));
    Map<List<Integer>, List<Integer>> sides = new LinkedHashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int a = place[mesh.corner(t, k)];
        int b = place[mesh.corner(t, (k + 1) % 3)];
        if (a != b) {
          List<Integer> key = List.of(Math.min(a, b), Math.max(a, b));
          sides.computeIfAbsent(key, unused -> new ArrayList<>()).add(t);
        }
      }
    }
    return sides;
  }

  /** Whether a triangle names the ends of an edge in their order. */
  private static boolean runs(Mesh mesh, int face, FeatureEdges.Edge edge) {
    int[] place = new Weld().firstAtPlace(mesh, tolerance(mesh));
    return IntStream.range(0, 3)
        .anyMatch(
            k ->
                place[mesh.corner(face, k)] == edge.from()
                    && place[mesh.corner(face, (k + 1) % 3)] == edge.to());
  }

  private static double tolerance(Mesh mesh) {
    return Tolerance.forCoordinates(
            Math.max(mesh.bounds().min().length(), mesh.bounds().max().length()))
        .same();
  }

  /** Blocks that touch, some with vertices of their own for every face, turned and moved away. */
  private static Mesh heap(Random random) {
    List<Mesh> blocks = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      Mesh block = DemoDeck.block(i % 3, i / 3, 0, i % 3 + 1, i / 3 + 1, 1 + random.nextInt(3));
      blocks.add(random.nextBoolean() ? block : loose(block));
    }
    Vec3 away = new Vec3(random.nextDouble(), -random.nextDouble(), 0.1).times(1e5);
    Transform turn = Transform.frame(away, new Vec3(random.nextDouble(), 0.4, 0.8), Vec3.X);
    return Mesh.union(blocks).transformed(turn);
  }

  private static Mesh loose(Mesh mesh) {
    double[] xyz = new double[9 * mesh.triangleCount()];
    for (int i = 0; i < xyz.length / 3; i++) {
      Vec3 p = mesh.point(i / 3, i % 3);
      xyz[3 * i] = p.x();
      xyz[3 * i + 1] = p.y();
      xyz[3 * i + 2] = p.z();
    }
    return new Mesh(xyz, IntStream.range(0, xyz.length / 3).toArray());
  }
}
