package org.underlee.ifc.shape;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * Cuts a closed mesh by a plane, keeps the side that the plane's normal points to, and closes the
 * cut with a cap. Vertices lie on a fine grid, and those within a step of the plane count as on it:
 * so a plane along a face leaves no slivers, and the noise of one cut does not grow in the next.
 */
final class PlaneCut {
  /** The area vectors of a closed surface sum to nothing, but for this share of its area. */
  private static final double OPEN_SHARE = 1e-6;

  private final Mesh mesh;
  private final double grid;
  private final double[] height;

  /** One more than the number that a vertex of the mesh has among those kept; 0: none yet. */
  private final int[] number;

  private final MeshBuilder kept = new MeshBuilder();
  private final Map<Long, Integer> crossings = new HashMap<>();

  /** Open edges of the kept part along the plane: from each vertex, where they run to. */
  private final Map<Integer, Deque<Integer>> rim = new HashMap<>();

  /** Which of the kept vertices are on the plane. */
  private final BitSet onPlane = new BitSet();

  private PlaneCut(Mesh mesh, double[] height, double grid) {
    this.mesh = mesh;
    this.height = height;
    this.grid = grid;
    this.number = new int[height.length];
  }

  /**
   * The step of the grid for a mesh: a power of two, 2⁻³⁰ of its largest coordinate, a hundredth of
   * a micrometre at ten metres.
   */
  static double grid(Mesh mesh) {
    return Math.scalb(1.0, exponent(mesh) - 30);
  }

  /** What a double's rounding leaves uncertain at the mesh's place, 2⁻⁴⁶ of it, 128 steps. */
  static double noise(Mesh mesh) {
    return Math.scalb(1.0, exponent(mesh) - 46);
  }

  private static int exponent(Mesh mesh) {
    double largest = Double.MIN_NORMAL;
    for (int i = 0; i < mesh.vertexCount(); i++) {
      Vec3 p = mesh.vertex(i);
      largest = Math.max(largest, Math.max(Math.abs(p.x()), Math.abs(p.y())));
      largest = Math.max(largest, Math.abs(p.z()));
    }
    return Math.getExponent(largest);
  }

  /** A plane by a point and a unit normal. */
  record Plane(Vec3 origin, Vec3 normal) {
    double height(Vec3 p) {
      return p.minus(origin).dot(normal);
    }

    /** The plane after a rigid map. */
    Plane transformed(Transform map) {
      return new Plane(map.apply(origin), map.direction(normal));
    }

    Plane turned() {
      return new Plane(origin, normal.negated());
    }
  }

  /**
   * The part of the mesh above the plane; empty when there is none.
   *
   * @param work what it is a part of
   * @throws IllegalStateException when the cut does not close, because the mesh was not closed
   */
  static Mesh above(Mesh mesh, Plane plane, double grid, CutWork work) {
    work.look(mesh);
    double[] height = new double[mesh.vertexCount()];
    boolean above = false;
    boolean below = false;
    for (int i = 0; i < height.length; i++) {
      double h = plane.height(mesh.vertex(i));
      height[i] = Math.abs(h) <= grid ? 0 : h;
      above |= height[i] > 0;
      below |= height[i] < 0;
    }
    if (!below || !above) {
      return below ? Mesh.EMPTY : mesh;
    }
    work.cut(mesh.triangleCount(), 1);
    return new PlaneCut(mesh, height, grid).cut(plane, work);
  }

  /** The part of the mesh below all planes of a convex region; empty when there is none. */
  static Mesh below(Mesh mesh, List<Plane> region, double grid, CutWork work) {
    Mesh inside = mesh;
    for (Plane plane : region) {
      inside = inside.isEmpty() ? inside : above(inside, plane.turned(), grid, work);
    }
    return inside;
  }

  private Mesh cut(Plane plane, CutWork work) {
    for (int t = 0; t < mesh.triangleCount(); t++) {
      triangle(mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2));
    }
    work.cap(rim.size());
    cap(FlatFace.frame(plane.origin(), plane.normal().negated()));
    return kept.mesh();
  }

  private void triangle(int a, int b, int c) {
    if (height[a] <= 0 && height[b] <= 0 && height[c] <= 0) {
      return;
    }
    if (height[a] > 0 && height[b] > 0 && height[c] > 0) {
      kept.triangle(keep(a), keep(b), keep(c));
      return;
    }
    int[] corner = {a, b, c};
    int[] ring = new int[4];
    int n = 0;
    for (int k = 0; k < 3; k++) {
      int p = corner[k];
      int q = corner[(k + 1) % 3];
      if (height[p] >= 0) {
        ring[n++] = keep(p);
      }
      if (height[p] * height[q] < 0) {
        ring[n++] = crossing(p, q);
      }
    }
    for (int i = 1; i + 1 < n; i++) {
      kept.triangle(ring[0], ring[i], ring[i + 1]);
    }
    for (int i = 0; i < n; i++) {
      note(ring[i], ring[(i + 1) % n]);
    }
  }

  /** A vertex of the mesh; several triangles share it, so it is looked up once. */
  private int keep(int vertex) {
    if (number[vertex] == 0) {
      number[vertex] = 1 + keep(mesh.vertex(vertex), height[vertex] == 0);
    }
    return number[vertex] - 1;
  }

  private int keep(Vec3 p, boolean on) {
    int vertex = kept.vertex(snap(p));
    if (on) {
      onPlane.set(vertex);
    }
    return vertex;
  }

  private double snap(double c) {
    return Math.rint(c / grid) * grid;
  }

  /** The vertex where an edge meets the plane, the same from both of its faces. */
  private int crossing(int p, int q) {
    int low = Math.min(p, q);
    int high = Math.max(p, q);
    return crossings.computeIfAbsent(
        (long) low << 32 | high,
        edge -> {
          Vec3 from = mesh.vertex(low);
          double share = height[low] / (height[low] - height[high]);
          return keep(from.plus(mesh.vertex(high).minus(from).times(share)), true);
        });
  }

  /** Notes an edge along the plane; one that runs back over it takes both away. */
  private void note(int from, int to) {
    if (from == to || !onPlane.get(from) || !onPlane.get(to)) {
      return;
    }
    Deque<Integer> back = rim.get(to);
    if (back == null || !back.remove(from)) {
      rim.computeIfAbsent(from, v -> new ArrayDeque<>()).add(to);
    }
  }

  private void cap(Transform frame) {
    // Both ways go through the whole rim: the first uses it up, so the second has its own copy.
    List<int[]> lines = new ArrayList<>();
    rim.forEach((from, all) -> all.forEach(to -> lines.add(new int[] {from, to})));
    try {
      List<int[]> triangles = new ArrayList<>();
      for (CapFaces.Face face : CapFaces.of(rings(), frame, grid)) {
        triangles.addAll(kept.triangles(face.outer(), face.holes()));
      }
      triangles.forEach(t -> kept.triangle(t[0], t[1], t[2]));
    } catch (IllegalStateException | IllegalArgumentException unclean) {
      capRegions(lines, frame);
    }
  }

  private void capRegions(List<int[]> lines, Transform frame) {
    CapRegions regions = new CapRegions(frame, grid);
    // A cap runs against the faces that it closes.
    lines.forEach(line -> regions.line(kept.point(line[1]), kept.point(line[0])));
    for (CapFaces.Face face : regions.faces()) {
      kept.face(snapped(face.outer()), face.holes().stream().map(this::snapped).toList());
    }
    requireClosed(kept.mesh());
  }

  private List<Vec3> snapped(List<Vec3> points) {
    return points.stream().map(this::snap).toList();
  }

  private Vec3 snap(Vec3 p) {
    return new Vec3(snap(p.x()), snap(p.y()), snap(p.z()));
  }

  static void requireClosed(Mesh mesh) {
    Vec3 sum = Vec3.ZERO;
    double area = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      sum = sum.plus(mesh.areaNormal(t));
      area += mesh.areaNormal(t).length();
    }
    if (sum.length() > OPEN_SHARE * area) {
      throw new IllegalStateException("a cut through it does not close: it is not a closed solid");
    }
  }

  private List<List<Vec3>> rings() {
    List<List<Vec3>> rings = new ArrayList<>();
    for (Integer start : rim.keySet().stream().sorted().toList()) {
      while (!rim.getOrDefault(start, new ArrayDeque<>()).isEmpty()) {
        rings.add(ring(start));
      }
    }
    return rings;
  }

  /** Follows the rim round, then backwards, since a cap runs against the faces it closes. */
  private List<Vec3> ring(int start) {
    List<Vec3> ring = new ArrayList<>();
    int at = start;
    do {
      ring.add(kept.point(at));
      Integer next = rim.getOrDefault(at, new ArrayDeque<>()).poll();
      if (next == null) {
        throw new IllegalStateException(
            "a cut through it does not close: it is not a closed solid");
      }
      at = next;
    } while (at != start);
    Collections.reverse(ring);
    return ring;
  }
}
