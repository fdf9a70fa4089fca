package org.underlee.clash;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * The least move that parts two bodies. Of convex ones it is along a face's normal or square to an
 * edge of each: the separating axes of S. Gottschalk, M. Lin and D. Manocha, "OBBTree", 1996. Of
 * others it is the move that parts what is stretched over them, and so no less than needed.
 *
 * @param by metres and direction: moving the second body by this frees it
 * @param complete whether every direction that may be the least was tried
 */
record Separation(Vec3 by, boolean complete) {
  /** Edge pairs beyond this are not tried: hundreds of edges on each are round in all but name. */
  private static final int MOST_PAIRS = 20_000;

  /** Faces this nearly in one plane have no edge between them (cosine). */
  private static final double FLAT = 1 - 1e-9;

  /** Directions are one when they agree to about this, in each coordinate. */
  private static final double SAME = 1e7;

  static Separation of(Mesh a, Mesh b) {
    List<Vec3> axes = new ArrayList<>(normals(a));
    axes.addAll(normals(b));
    List<Vec3> edgesA = edges(a);
    List<Vec3> edgesB = edges(b);
    boolean complete = (long) edgesA.size() * edgesB.size() <= MOST_PAIRS;
    if (complete) {
      for (Vec3 e : edgesA) {
        edgesB.forEach(f -> direction(e.cross(f), axes));
      }
    }
    Vec3 best = Vec3.ZERO;
    double least = Double.POSITIVE_INFINITY;
    for (Vec3 axis : axes) {
      double[] p = span(a, axis);
      double[] q = span(b, axis);
      double forward = p[1] - q[0];
      double back = q[1] - p[0];
      double move = Math.max(0, Math.min(forward, back));
      if (move < least) {
        least = move;
        best = axis.times(forward <= back ? move : -move);
      }
    }
    return new Separation(best, complete);
  }

  double depth() {
    return by.length();
  }

  private static void direction(Vec3 cross, List<Vec3> into) {
    double length = cross.length();
    if (length > 1e-6) {
      into.add(cross.times(1 / length));
    }
  }

  private static double[] span(Mesh mesh, Vec3 axis) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double at = mesh.vertex(v).dot(axis);
      low = Math.min(low, at);
      high = Math.max(high, at);
    }
    return new double[] {low, high};
  }

  private static List<Vec3> normals(Mesh mesh) {
    Map<Vec3, Vec3> all = new HashMap<>();
    List<Vec3> kept = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      keep(mesh.areaNormal(t), all, kept);
    }
    return kept;
  }

  /** Directions of the edges at which a surface bends. */
  private static List<Vec3> edges(Mesh mesh) {
    Map<List<Vec3>, Vec3> beside = new HashMap<>();
    Map<Vec3, Vec3> all = new HashMap<>();
    List<Vec3> kept = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.areaNormal(t);
      double area = normal.length();
      for (int i = 0; area > 0 && i < 3; i++) {
        Vec3 p = mesh.point(t, i);
        Vec3 q = mesh.point(t, (i + 1) % 3);
        Vec3 other = beside.remove(List.of(q, p));
        if (other == null) {
          beside.put(List.of(p, q), normal.times(1 / area));
        } else if (other.dot(normal) / area < FLAT) {
          keep(q.minus(p), all, kept);
        }
      }
    }
    return kept;
  }

  private static void keep(Vec3 d, Map<Vec3, Vec3> all, List<Vec3> kept) {
    double length = d.length();
    if (!(length > 0)) {
      return;
    }
    Vec3 unit = d.times(1 / length);
    double lead = lead(unit);
    Vec3 turned = lead < 0 ? unit.negated() : unit;
    Vec3 key =
        new Vec3(
            Math.rint(turned.x() * SAME) + 0.0,
            Math.rint(turned.y() * SAME) + 0.0,
            Math.rint(turned.z() * SAME) + 0.0);
    if (all.putIfAbsent(key, turned) == null) {
      kept.add(turned);
    }
  }

  /** The first coordinate that is not nothing: a direction and its opposite are one. */
  private static double lead(Vec3 d) {
    double nothing = 1 / SAME;
    if (Math.abs(d.x()) > nothing) {
      return d.x();
    }
    return Math.abs(d.y()) > nothing ? d.y() : d.z();
  }
}
