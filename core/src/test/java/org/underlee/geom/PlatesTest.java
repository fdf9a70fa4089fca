package org.underlee.geom;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;

/** Outlines of four corners are cut as JTS, an independent library, cuts them. */
class PlatesTest {
  static IntStream seeds() {
    return IntStream.range(0, 200);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aConvexPlateIsCutAsJtsCutsIt(int seed) {
    Random random = new Random(seed);
    double[] angles = random.doubles(4, 0, 2 * Math.PI).sorted().toArray();
    double flat = Math.pow(10, -4 * random.nextDouble());
    List<Vec2> ring =
        Arrays.stream(angles)
            .mapToObj(a -> new Vec2(10 + Math.cos(a), 20 + flat * Math.sin(a)))
            .toList();
    Triangulation cut = Triangulation.of(Outline.of(ring));
    assertThat(cut.triangles().stream().map(t -> corners(cut.points(), t)).toList())
        .isEqualTo(byJts(ring));
  }

  private static List<Vec2> corners(List<Vec2> points, int[] triangle) {
    return Arrays.stream(triangle).mapToObj(points::get).toList();
  }

  private static List<List<Vec2>> byJts(List<Vec2> ring) {
    Coordinate[] closed =
        IntStream.rangeClosed(0, ring.size())
            .mapToObj(i -> ring.get(i % ring.size()))
            .map(p -> new Coordinate(p.x(), p.y()))
            .toArray(Coordinate[]::new);
    Geometry cut = PolygonTriangulator.triangulate(new GeometryFactory().createPolygon(closed));
    return IntStream.range(0, cut.getNumGeometries())
        .mapToObj(i -> counterClockwise(cut.getGeometryN(i).getCoordinates()))
        .toList();
  }

  private static List<Vec2> counterClockwise(Coordinate[] c) {
    List<Vec2> given = Arrays.stream(c).limit(3).map(p -> new Vec2(p.x, p.y)).toList();
    return Outline.signedArea(given) >= 0
        ? given
        : List.of(given.get(0), given.get(2), given.get(1));
  }
}
