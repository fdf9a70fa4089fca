package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * A slow and obvious witness for the proof: one drop at a time is let fall on the triangles of all
 * pieces and walks downhill in small steps. It shares no code with the partition: its own rays, its
 * own grid, its own walk; the rules for joists, narrow edges and laps are those of the page "where
 * every drop goes".
 */
final class DropMarch {
  private static final double STEP = 0.001;
  private static final double CELL = 0.1;
  private static final int MOST_STEPS = 60_000;

  /** What became of a drop: the id of its outlet, or empty when it leaked. */
  record End(Optional<String> outlet, Vec3 at, String last) {}

  private record Triangle(int piece, Vec3 a, Vec3 b, Vec3 c, Vec3 normal) {}

  private record Hit(Triangle triangle, double z) {}

  private final DrainCase given;
  private final Map<Long, List<Triangle>> grid = new HashMap<>();
  private final List<double[]> spans = new ArrayList<>();

  /** Every face of each piece that is no wall. */
  private final List<List<Triangle>> faces = new ArrayList<>();

  DropMarch(DrainCase given) {
    this.given = given;
    for (int i = 0; i < given.pieces().size(); i++) {
      Mesh mesh = given.pieces().get(i).shape();
      double[] span = {9e9, -9e9, 9e9, -9e9, 9e9, -9e9};
      List<Triangle> own = new ArrayList<>();
      faces.add(own);
      for (int t = 0; t < mesh.triangleCount(); t++) {
        Vec3 a = given.frame().toLocal(mesh.point(t, 0));
        Vec3 b = given.frame().toLocal(mesh.point(t, 1));
        Vec3 c = given.frame().toLocal(mesh.point(t, 2));
        for (Vec3 p : List.of(a, b, c)) {
          span[0] = Math.min(span[0], p.x());
          span[1] = Math.max(span[1], p.x());
          span[2] = Math.min(span[2], p.y());
          span[3] = Math.max(span[3], p.y());
          span[4] = Math.min(span[4], p.z());
          span[5] = Math.max(span[5], p.z());
        }
        Kind kind = given.pieces().get(i).kind();
        Vec3 n = b.minus(a).cross(c.minus(a));
        if (Math.abs(n.z()) > 1e-6 * n.length()) {
          boolean down = n.z() < 0;
          own.add(new Triangle(i, a, down ? c : b, down ? b : c, n));
        }
        if (n.length() > 0
            && n.z() / n.length() > 0.05
            && kind != Kind.OUTLET
            && kind != Kind.PIPE) {
          put(new Triangle(i, a, b, c, n.times(1 / n.length())));
        }
      }
      spans.add(span);
      if (given.pieces().get(i).sealed()) {
        plugs(own).forEach(this::put);
      }
    }
  }

  /** Triangles that close the holes of a piece's floor, its largest face. */
  private static List<Triangle> plugs(List<Triangle> faces) {
    Triangle floor =
        faces.stream()
            .filter(t -> t.normal.z() > 0)
            .max(Comparator.comparingDouble(t -> t.normal.length()))
            .orElseThrow();
    Map<String, Vec3[]> edges = new TreeMap<>();
    for (Triangle t : faces) {
      double off = t.a.minus(floor.a).dot(floor.normal) / floor.normal.length();
      if (t.normal.z() > 0 && Math.abs(off) < 1e-5) {
        toggle(edges, t.a, t.b);
        toggle(edges, t.b, t.c);
        toggle(edges, t.c, t.a);
      }
    }
    List<Triangle> plugs = new ArrayList<>();
    while (!edges.isEmpty()) {
      List<Vec3> ring = ring(edges);
      Vec3 middle = Vec3.ZERO;
      for (Vec3 p : ring) {
        middle = middle.plus(p.times(1.0 / ring.size()));
      }
      double twice = 0;
      List<Triangle> fan = new ArrayList<>();
      for (int i = 0; i < ring.size(); i++) {
        Vec3 p = ring.get(i);
        Vec3 q = ring.get((i + 1) % ring.size());
        twice += p.x() * q.y() - p.y() * q.x();
        fan.add(new Triangle(floor.piece, middle, q, p, floor.normal));
      }
      if (twice < 0) {
        plugs.addAll(fan);
      }
    }
    return plugs;
  }

  private static void toggle(Map<String, Vec3[]> edges, Vec3 p, Vec3 q) {
    if (edges.remove(name(q) + name(p)) == null) {
      edges.put(name(p) + name(q), new Vec3[] {p, q});
    }
  }

  /** Takes one ring of edges out of those that are left. */
  private static List<Vec3> ring(Map<String, Vec3[]> edges) {
    List<Vec3> ring = new ArrayList<>();
    String at = name(edges.values().iterator().next()[0]);
    while (true) {
      String from = at;
      Optional<String> next = edges.keySet().stream().filter(k -> k.startsWith(from)).findFirst();
      if (next.isEmpty()) {
        return ring;
      }
      Vec3[] edge = edges.remove(next.get());
      ring.add(edge[0]);
      at = name(edge[1]);
    }
  }

  private static String name(Vec3 p) {
    return String.format(Locale.ROOT, "(%.5f %.5f)", p.x() + 0.0, p.y() + 0.0);
  }

  private void put(Triangle t) {
    int x0 = (int) Math.floor(Math.min(t.a.x(), Math.min(t.b.x(), t.c.x())) / CELL);
    int x1 = (int) Math.floor(Math.max(t.a.x(), Math.max(t.b.x(), t.c.x())) / CELL);
    int y0 = (int) Math.floor(Math.min(t.a.y(), Math.min(t.b.y(), t.c.y())) / CELL);
    int y1 = (int) Math.floor(Math.max(t.a.y(), Math.max(t.b.y(), t.c.y())) / CELL);
    for (int x = x0; x <= x1; x++) {
      for (int y = y0; y <= y1; y++) {
        grid.computeIfAbsent(key(x, y), k -> new ArrayList<>()).add(t);
      }
    }
  }

  private static long key(int x, int y) {
    return ((long) x << 32) ^ (y & 0xffffffffL);
  }

  /** The highest face below a height on a vertical line. */
  private Optional<Hit> below(double x, double y, double z, boolean joists) {
    Hit best = null;
    int gx = (int) Math.floor(x / CELL);
    int gy = (int) Math.floor(y / CELL);
    for (Triangle t : grid.getOrDefault(key(gx, gy), List.of())) {
      if (!joists && kind(t.piece) == Kind.JOIST) {
        continue;
      }
      double w = height(t, x, y);
      if (w <= z && (best == null || w > best.z)) {
        best = new Hit(t, w);
      }
    }
    return Optional.ofNullable(best);
  }

  private static double height(Triangle t, double x, double y) {
    double d1 = side(t.a, t.b, x, y);
    double d2 = side(t.b, t.c, x, y);
    double d3 = side(t.c, t.a, x, y);
    if (d1 < 0 || d2 < 0 || d3 < 0) {
      return Double.POSITIVE_INFINITY;
    }
    return t.a.z() - (t.normal.x() * (x - t.a.x()) + t.normal.y() * (y - t.a.y())) / t.normal.z();
  }

  private static double side(Vec3 p, Vec3 q, double x, double y) {
    return (q.x() - p.x()) * (y - p.y()) - (q.y() - p.y()) * (x - p.x());
  }

  private Kind kind(int piece) {
    return given.pieces().get(piece).kind();
  }

  /** Lets a drop fall on a place of the plan. */
  End drop(double x, double y, java.util.Random random) {
    Optional<Hit> start = below(x, y, 1e6, true);
    if (start.isPresent() && kind(start.get().triangle.piece) == Kind.JOIST) {
      return offJoist(x, y, start.get(), random);
    }
    return start.isEmpty() ? lost(x, y, 0, "") : walk(x, y, start.get(), random);
  }

  private End lost(double x, double y, double z, String last) {
    return new End(Optional.empty(), new Vec3(x, y, z), last);
  }

  /** To the nearer long side, and down beside the joist onto whatever is there. */
  private End offJoist(double x, double y, Hit on, java.util.Random random) {
    double[] span = spans.get(on.triangle.piece);
    boolean alongX = span[1] - span[0] > span[3] - span[2];
    double dx = 0;
    double dy = 0;
    double centre = centre(on.triangle.piece, alongX, alongX ? x : y);
    if (alongX) {
      dy = y < centre ? -1 : 1;
    } else {
      dx = x < centre ? -1 : 1;
    }
    double px = x;
    double py = y;
    for (int i = 0; i < 400; i++) {
      px += dx * 0.0005;
      py += dy * 0.0005;
      Optional<Hit> hit = below(px, py, on.z + 0.001, true);
      if (hit.isEmpty() || hit.get().triangle.piece != on.triangle.piece) {
        Optional<Hit> landing = below(px, py, on.z, false);
        return landing.isEmpty()
            ? lost(px, py, on.z, "joist")
            : walk(px, py, landing.get(), random);
      }
    }
    return lost(px, py, on.z, "joist");
  }

  private double centre(int piece, boolean alongX, double at) {
    Mesh mesh = given.pieces().get(piece).shape();
    double[] span = spans.get(piece);
    double middle = alongX ? (span[0] + span[1]) / 2 : (span[2] + span[3]) / 2;
    double[] a = new double[2];
    double[] c = new double[2];
    int[] n = new int[2];
    for (int i = 0; i < mesh.vertexCount(); i++) {
      Vec3 p = given.frame().toLocal(mesh.vertex(i));
      double along = alongX ? p.x() : p.y();
      int end = along < middle ? 0 : 1;
      a[end] += along;
      c[end] += alongX ? p.y() : p.x();
      n[end]++;
    }
    double share = (at - a[0] / n[0]) / (a[1] / n[1] - a[0] / n[0]);
    return c[0] / n[0] + share * (c[1] / n[1] - c[0] / n[0]);
  }

  private End walk(double startX, double startY, Hit startHit, java.util.Random random) {
    double x = startX;
    double y = startY;
    Hit on = startHit;
    for (int i = 0; i < MOST_STEPS; i++) {
      int outlet = outletAt(x, y, on);
      if (outlet >= 0) {
        return new End(Optional.of(given.pieces().get(outlet).id()), new Vec3(x, y, on.z), "");
      }
      double[] way = way(x, y, on, random);
      if (turnsBack(x, y, on, way)) {
        way = towardOutlet(x, y, on);
      }
      if (way.length == 0) {
        return lost(x, y, on.z, "stands on " + given.pieces().get(on.triangle.piece).id());
      }
      x += way[0];
      y += way[1];
      Optional<Hit> next = below(x, y, on.z + 0.0003, true);
      if (next.isPresent() && kind(next.get().triangle.piece) == Kind.JOIST) {
        next = below(x, y, on.z + 0.0003, false);
      }
      if (next.isEmpty()) {
        return lost(x, y, on.z, given.pieces().get(on.triangle.piece).id());
      }
      on = next.get();
    }
    return lost(x, y, on.z, "walked on and on");
  }

  /** One step downhill, or along what is in the way; nothing when the drop stands. */
  private double[] way(double x, double y, Hit on, java.util.Random random) {
    double gx = on.triangle.normal.x() / on.triangle.normal.z();
    double gy = on.triangle.normal.y() / on.triangle.normal.z();
    double slope = Math.hypot(gx, gy);
    if (isNarrow(x, y, on)) {
      return offNarrow(x, y, on, random);
    }
    if (slope < 0.001) {
      return offLevel(x, y, on);
    }
    double dx = gx / slope * STEP;
    double dy = gy / slope * STEP;
    if (isFree(x + dx, y + dy, on)) {
      return new double[] {dx, dy};
    }
    // Along the wall, whichever way goes down.
    for (int degrees = 5; degrees < 90; degrees += 4) {
      for (int turn = -1; turn <= 1; turn += 2) {
        double c = Math.cos(Math.toRadians(degrees));
        double n = turn * Math.sin(Math.toRadians(degrees));
        double[] s = {c * dx - n * dy, n * dx + c * dy};
        if (isFree(x + s[0], y + s[1], on)) {
          return s;
        }
      }
    }
    return towardOutlet(x, y, on);
  }

  /** Over a valley line, where the next face falls back toward the drop. */
  private boolean turnsBack(double x, double y, Hit on, double[] way) {
    if (way.length == 0 || kind(on.triangle.piece) != Kind.GUTTER) {
      return false;
    }
    Optional<Hit> next = below(x + way[0], y + way[1], on.z + 0.0003, false);
    return next.isPresent()
        && next.get().triangle.piece != on.triangle.piece
        && next.get().triangle.normal.x() * way[0] + next.get().triangle.normal.y() * way[1] < 0
        && on.z - next.get().z < 0.0003;
  }

  private double[] towardOutlet(double x, double y, Hit on) {
    for (int i = 0; i < given.pieces().size(); i++) {
      double[] s = spans.get(i);
      double dx = (s[0] + s[1]) / 2 - x;
      double dy = (s[2] + s[3]) / 2 - y;
      double away = Math.hypot(dx, dy);
      if (kind(i) == Kind.OUTLET && away < 0.12 && Math.abs(on.z - s[5]) < 0.04) {
        return new double[] {dx / away * STEP, dy / away * STEP};
      }
    }
    return new double[0];
  }

  /** No sheet rises here above the drop from below it. */
  private boolean isFree(double x, double y, Hit on) {
    int gx = (int) Math.floor(x / CELL);
    int gy = (int) Math.floor(y / CELL);
    for (Triangle t : grid.getOrDefault(key(gx, gy), List.of())) {
      double w = height(t, x, y);
      if (w > on.z + 0.0003 && w < 1e5 && standsHere(t, x, y, on.z)) {
        return false;
      }
    }
    return true;
  }

  /** Whether the piece's underside at the place is below the drop: tried by its other faces. */
  private boolean standsHere(Triangle top, double x, double y, double z) {
    int crossings = 0;
    for (Triangle face : faces.get(top.piece)) {
      double w = height(face, x, y);
      // Just above the drop: inside of the solid when an odd way in is left above.
      if (w < 1e5 && w > z + 0.00015) {
        crossings += face.normal.z() < 0 ? -1 : 1;
      }
    }
    return crossings > 0;
  }

  private boolean isNarrow(double x, double y, Hit on) {
    return narrowWay(x, y, on) != 0;
  }

  /** 1 when the face is narrower than a drop along x, 2 along y, else 0. */
  private int narrowWay(double x, double y, Hit on) {
    if (!same(x - 0.0031, y, on) && !same(x + 0.0031, y, on) && width(x, y, on, 1, 0) < 0.003) {
      return 1;
    }
    return !same(x, y - 0.0031, on) && !same(x, y + 0.0031, on) && width(x, y, on, 0, 1) < 0.003
        ? 2
        : 0;
  }

  private double width(double x, double y, Hit on, int ux, int uy) {
    int n = 0;
    for (int i = -31; i <= 31; i++) {
      n += same(x + ux * i * 0.0001, y + uy * i * 0.0001, on) ? 1 : 0;
    }
    return n * 0.0001;
  }

  private boolean same(double x, double y, Hit on) {
    int gx = (int) Math.floor(x / CELL);
    int gy = (int) Math.floor(y / CELL);
    for (Triangle t : grid.getOrDefault(key(gx, gy), List.of())) {
      if (t.piece == on.triangle.piece && t.normal.minus(on.triangle.normal).length() < 1e-6) {
        double w = height(t, x, y);
        double expected =
            on.triangle.a.z()
                - (on.triangle.normal.x() * (x - on.triangle.a.x())
                        + on.triangle.normal.y() * (y - on.triangle.a.y()))
                    / on.triangle.normal.z();
        if (w < 1e5 && Math.abs(w - expected) < 1e-5) {
          return true;
        }
      }
    }
    return false;
  }

  /** To a lower side of a narrow edge; to either by chance where both are lower. */
  private double[] offNarrow(double x, double y, Hit on, java.util.Random random) {
    boolean alongX = narrowWay(x, y, on) == 1;
    List<double[]> ways = new ArrayList<>();
    for (int s = -1; s <= 1; s += 2) {
      for (double d = 0.0001; d < 0.0032; d += 0.0001) {
        double dx = alongX ? s * d : 0;
        double dy = alongX ? 0 : s * d;
        if (!same(x + dx, y + dy, on)) {
          double[] beyond = {dx * 1.05, dy * 1.05};
          if (isFree(x + beyond[0], y + beyond[1], on)) {
            ways.add(beyond);
          }
          break;
        }
      }
    }
    return ways.isEmpty() ? new double[0] : ways.get(random.nextInt(ways.size()));
  }

  private double[] offLevel(double x, double y, Hit on) {
    for (int r = 1; r < 200; r++) {
      double d = r * 0.0005;
      for (double[] way : new double[][] {{d, 0}, {-d, 0}, {0, d}, {0, -d}}) {
        if (!same(x + way[0], y + way[1], on) && isFree(x + way[0], y + way[1], on)) {
          return way;
        }
      }
    }
    return new double[0];
  }

  private int outletAt(double x, double y, Hit on) {
    if (kind(on.triangle.piece) != Kind.GUTTER) {
      return -1;
    }
    for (int i = 0; i < given.pieces().size(); i++) {
      double[] s = spans.get(i);
      double radius = (s[1] - s[0]) / 2;
      if (kind(i) == Kind.OUTLET
          && Math.hypot(x - (s[0] + s[1]) / 2, y - (s[2] + s[3]) / 2) < radius
          && Math.abs(on.z - s[5]) < 0.04) {
        return i;
      }
    }
    return -1;
  }
}
