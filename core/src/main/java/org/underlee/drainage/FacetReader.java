package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.underlee.finding.StopSign;
import org.underlee.geom.Mesh;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * Takes the faces of a piece that water can lie on or drip from: triangles of one plane become one
 * facet, of which only the outline counts. Walls have no place in plan and are left out. A triangle
 * without area has no plane of its own, only rounding; it goes with the face that it lies along.
 */
final class FacetReader {
  /** Directions and places are one when they agree to this part of one and of a metre. */
  private static final double SAME = 1e-5;

  private final int piece;
  private final boolean fillHoles;
  private final Vec3[] points;

  /** By vertex: the first one at its place; bodies that touch share none. */
  private final int[] same;

  /** By vertex: its place, in steps of what is one place. */
  private final Point[] places;

  private final Mesh mesh;

  /** Metres that are rounding. */
  private final double noise;

  private record PlaneKey(boolean up, long x, long y, long distance) {}

  private record Point(long x, long y, long z) {}

  private FacetReader(int number, Piece piece, Transform frame) {
    this.piece = number;
    this.fillHoles = piece.sealed();
    this.mesh = piece.shape();
    this.noise = Tolerance.noise(furthest(mesh));
    this.points = new Vec3[mesh.vertexCount()];
    this.places = new Point[points.length];
    this.same = new int[points.length];
    Map<Point, Integer> known = new HashMap<>();
    for (int i = 0; i < points.length; i++) {
      points[i] = frame.toLocal(mesh.vertex(i));
      places[i] = point(points[i]);
      Integer before = known.putIfAbsent(places[i], i);
      same[i] = before == null ? i : before;
    }
  }

  /** The largest of its coordinates. */
  private static double furthest(Mesh mesh) {
    Vec3 min = mesh.bounds().min();
    Vec3 max = mesh.bounds().max();
    return Stream.of(min.x(), min.y(), min.z(), max.x(), max.y(), max.z())
        .mapToDouble(Math::abs)
        .max()
        .orElse(0);
  }

  static List<Facet> read(List<Piece> pieces, Transform frame) {
    StopSign stop = StopSign.here();
    return IntStream.range(0, pieces.size())
        .parallel()
        .mapToObj(
            i -> {
              stop.obey();
              return new FacetReader(i, pieces.get(i), frame).facets();
            })
        .flatMap(List::stream)
        .toList();
  }

  private List<Facet> facets() {
    Map<PlaneKey, FaceOutline> groups = new LinkedHashMap<>();
    List<int[]> withoutArea = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 p = points[mesh.corner(t, 0)];
      Vec3 q = points[mesh.corner(t, 1)];
      Vec3 r = points[mesh.corner(t, 2)];
      Vec3 normal = q.minus(p).cross(r.minus(p));
      double length = normal.length();
      if (length <= noise * longest(p, q, r)) {
        withoutArea.add(corners(t));
      } else if (Math.abs(normal.z()) > WaterRules.WALL * length) {
        add(groups, normal.times(1 / length), length, p).toggle(corners(t));
      }
    }
    Slivers.giveAway(List.copyOf(groups.values()), withoutArea, this::liesIn);
    return groups.values().stream().filter(g -> !g.edges.isEmpty()).map(this::facet).toList();
  }

  private int[] corners(int triangle) {
    return new int[] {
      same[mesh.corner(triangle, 0)], same[mesh.corner(triangle, 1)], same[mesh.corner(triangle, 2)]
    };
  }

  private static double longest(Vec3 p, Vec3 q, Vec3 r) {
    return Math.max(p.distance(q), Math.max(q.distance(r), r.distance(p)));
  }

  private boolean liesIn(FaceOutline group, int[] corners) {
    return Arrays.stream(corners)
        .allMatch(c -> Math.abs(group.normal.dot(points[c].minus(group.on))) <= SAME);
  }

  private static FaceOutline add(
      Map<PlaneKey, FaceOutline> groups, Vec3 unit, double area, Vec3 p) {
    PlaneKey key =
        new PlaneKey(
            unit.z() > 0,
            Math.round(unit.x() / SAME / 10),
            Math.round(unit.y() / SAME / 10),
            Math.round(unit.dot(p) / SAME));
    FaceOutline group = groups.computeIfAbsent(key, k -> new FaceOutline());
    if (area > group.area) {
      group.area = area;
      group.normal = unit;
      group.on = p;
    }
    return group;
  }

  private static Point point(Vec3 p) {
    return new Point(Math.round(p.x() / SAME), Math.round(p.y() / SAME), Math.round(p.z() / SAME));
  }

  private Facet facet(FaceOutline group) {
    Vec3 n = group.normal;
    double b = -n.x() / n.z();
    double c = -n.y() / n.z();
    double a = group.on.z() - b * group.on.x() - c * group.on.y();
    List<FaceOutline.Edge> outline = fillHoles ? withoutHoles(group) : List.copyOf(group.edges);
    double[] edges = new double[4 * outline.size()];
    double twiceArea = 0;
    double around = 0;
    for (int i = 0; i < outline.size(); i++) {
      Point p = places[outline.get(i).from()];
      Point q = places[outline.get(i).to()];
      twiceArea += SAME * SAME * ((double) p.x * q.y - (double) q.x * p.y);
      around += SAME * Math.hypot((double) (q.x - p.x), (double) (q.y - p.y));
      boolean turned = q.x < p.x;
      put(edges, 4 * i, turned ? q : p);
      put(edges, 4 * i + 2, turned ? p : q);
    }
    boolean thin = Math.abs(twiceArea) / around < WaterRules.DROP;
    return new Facet(piece, n.z() > 0, a, b, c, edges, thin);
  }

  private static void put(double[] edges, int at, Point p) {
    edges[at] = SAME * (double) p.x;
    edges[at + 1] = SAME * (double) p.y;
  }

  private List<FaceOutline.Edge> withoutHoles(FaceOutline group) {
    Map<Integer, FaceOutline.Edge> next = new HashMap<>();
    group.edges.forEach(e -> next.put(e.from(), e));
    List<FaceOutline.Edge> kept = new ArrayList<>();
    Set<FaceOutline.Edge> left = new LinkedHashSet<>(group.edges);
    while (!left.isEmpty()) {
      List<FaceOutline.Edge> ring = new ArrayList<>();
      double twiceArea = 0;
      FaceOutline.Edge edge = left.iterator().next();
      while (edge != null && left.remove(edge)) {
        ring.add(edge);
        Point p = places[edge.from()];
        Point q = places[edge.to()];
        twiceArea += (double) p.x * q.y - (double) q.x * p.y;
        edge = next.get(edge.to());
      }
      if (twiceArea > 0 == group.normal.z() > 0) {
        kept.addAll(ring);
      }
    }
    return kept;
  }
}
