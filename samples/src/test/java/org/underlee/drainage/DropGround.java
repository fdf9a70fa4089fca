package org.underlee.drainage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/** The triangles of all pieces that a drop can fall on, in a plain grid of its own. */
final class DropGround {
  private static final double CELL = 0.1;

  record Triangle(int piece, Vec3 a, Vec3 b, Vec3 c, Vec3 normal) {}

  record Hit(Triangle triangle, double z) {}

  private final DrainCase given;
  private final Map<Long, List<Triangle>> grid = new HashMap<>();
  private final List<double[]> spans = new ArrayList<>();

  /** Every face of each piece that is no wall. */
  private final List<List<Triangle>> faces = new ArrayList<>();

  DropGround(DrainCase given) {
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
        DropPlugs.of(own).forEach(this::put);
      }
    }
  }

  int pieces() {
    return given.pieces().size();
  }

  String id(int piece) {
    return given.pieces().get(piece).id();
  }

  /** From x to x, y to y, z to z. */
  double[] span(int piece) {
    return spans.get(piece);
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
  Optional<Hit> below(double x, double y, double z, boolean joists) {
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

  Kind kind(int piece) {
    return given.pieces().get(piece).kind();
  }

  /** The middle line of a piece across its length, at a place along it. */
  double centre(int piece, boolean alongX, double at) {
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

  /** No sheet rises here above the drop from below it. */
  boolean isFree(double x, double y, Hit on) {
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

  /** Whether the face that a drop is on goes on here. */
  boolean same(double x, double y, Hit on) {
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
}
