package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.underlee.geom.Vec2;

/** Tiles of random size and turn on a field of 4 m by 4 m, each at its own height. */
final class RandomPlan {
  static final int TILES = 14;

  /** Nearer to an edge, or narrower, than this a place tells nothing. */
  static final double CLEAR = 0.002;

  final List<List<Vec2>> tiles = new ArrayList<>();
  final List<List<Vec2>> bays =
      List.of(ByHand.ring(0.3, 0.4, 3.1, 1.7), ByHand.ring(0.3, 1.7, 3.1, 3.9));
  final List<Vec2> opening = ByHand.ring(1.8, 1.9, 1.9, 2);
  final PlanSweep sweep;
  final Neighbours neighbours;

  RandomPlan(long seed, int stretches) {
    Random random = new Random(seed);
    List<Facet> facets = new ArrayList<>();
    for (int i = 0; i < TILES; i++) {
      List<Vec2> tile = tile(random);
      tiles.add(tile);
      facets.add(new Facet(i, true, i, 0, 0, edges(tile), false));
      facets.add(new Facet(i, false, i - 0.5, 0, 0, edges(tile), false));
    }
    List<double[]> areas =
        Stream.concat(bays.stream(), Stream.of(opening)).map(RandomPlan::edges).toList();
    List<double[]> cuts = List.of(edges(ByHand.ring(0.5, 0.5, 2.5, 0.7)));
    sweep = new PlanSweep(facets, areas, 1, cuts).sweep(new double[] {2.22}, stretches);
    neighbours = new Neighbours(sweep);
  }

  /** One in three is square to the field, as sheets are. */
  private static List<Vec2> tile(Random random) {
    double turn = random.nextInt(3) == 0 ? 0 : random.nextDouble() * Math.PI;
    Vec2 at = new Vec2(4 * random.nextDouble(), 4 * random.nextDouble());
    double length = 0.1 + 1.5 * random.nextDouble();
    double width = 0.1 + 0.6 * random.nextDouble();
    List<Vec2> ring = new ArrayList<>();
    for (Vec2 p : ByHand.ring(0, 0, length, width)) {
      ring.add(
          new Vec2(
              at.x() + p.x() * Math.cos(turn) - p.y() * Math.sin(turn),
              at.y() + p.x() * Math.sin(turn) + p.y() * Math.cos(turn)));
    }
    return ring;
  }

  private static double[] edges(List<Vec2> ring) {
    double[] edges = new double[4 * ring.size()];
    for (int i = 0; i < ring.size(); i++) {
      Vec2 p = ring.get(i);
      Vec2 q = ring.get((i + 1) % ring.size());
      Vec2 first = p.x() <= q.x() ? p : q;
      Vec2 second = first == p ? q : p;
      edges[4 * i] = first.x();
      edges[4 * i + 1] = first.y();
      edges[4 * i + 2] = second.x();
      edges[4 * i + 3] = second.y();
    }
    return edges;
  }

  Stream<List<Vec2>> rings() {
    return Stream.of(tiles.stream(), bays.stream(), Stream.of(opening)).flatMap(s -> s);
  }

  boolean isNearAnEdge(Vec2 p) {
    return rings().anyMatch(r -> distance(r, p) < CLEAR);
  }

  /** Numbers of the tiles over a place, from the highest down. */
  List<Integer> over(Vec2 p) {
    List<Integer> over = new ArrayList<>();
    for (int i = TILES - 1; i >= 0; i--) {
      if (holds(tiles.get(i), p)) {
        over.add(i);
      }
    }
    return over;
  }

  int bay(Vec2 p) {
    return holds(bays.get(0), p) ? 0 : holds(bays.get(1), p) ? 1 : -1;
  }

  private static double distance(List<Vec2> ring, Vec2 p) {
    double least = Double.MAX_VALUE;
    for (int i = 0; i < ring.size(); i++) {
      Vec2 a = ring.get(i);
      Vec2 b = ring.get((i + 1) % ring.size());
      double dx = b.x() - a.x();
      double dy = b.y() - a.y();
      double t = ((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / (dx * dx + dy * dy);
      double k = Math.max(0, Math.min(1, t));
      least = Math.min(least, Math.hypot(p.x() - a.x() - k * dx, p.y() - a.y() - k * dy));
    }
    return least;
  }

  /** Of a convex ring that runs counter-clockwise. */
  static boolean holds(List<Vec2> ring, Vec2 p) {
    for (int i = 0; i < ring.size(); i++) {
      Vec2 a = ring.get(i);
      Vec2 b = ring.get((i + 1) % ring.size());
      if ((b.x() - a.x()) * (p.y() - a.y()) < (b.y() - a.y()) * (p.x() - a.x())) {
        return false;
      }
    }
    return true;
  }
}
