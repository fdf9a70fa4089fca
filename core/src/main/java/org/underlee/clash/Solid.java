package org.underlee.clash;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.underlee.geom.Box;
import org.underlee.geom.Bvh;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * A body to be tested: its surface, whether that is closed, and whether it bulges nowhere inwards.
 * Both are found out once. Coordinates that are no numbers are refused by {@link Mesh}.
 */
public final class Solid {
  /** Corners this far outside of a face's plane, as a share of the body's size, are not: noise. */
  private static final double FLAT = 1e-9;

  /** Bodies with more triangles are not tried for convexity: it takes faces times corners. */
  private static final int MOST_TRIED = 2_000;

  private final Mesh mesh;
  private final boolean closed;
  private final boolean convex;
  private @Nullable Bvh tree;

  private Solid(Mesh mesh) {
    this.mesh = mesh;
    this.closed = isClosed(mesh);
    this.convex = closed && isConvex(mesh);
  }

  public static Solid of(Mesh mesh) {
    return new Solid(mesh);
  }

  public Mesh mesh() {
    return mesh;
  }

  public Box bounds() {
    return mesh.bounds();
  }

  /** Whether every edge has two faces, so that there is an inside. */
  public boolean isClosed() {
    return closed;
  }

  public boolean isConvex() {
    return convex;
  }

  synchronized Bvh tree() {
    Bvh known = tree;
    if (known == null) {
      known = Bvh.of(mesh);
      tree = known;
    }
    return known;
  }

  boolean holds(Vec3 p) {
    return closed && tree().holds(p);
  }

  /** Corners with the same place are one, whatever their numbers. */
  private static boolean isClosed(Mesh mesh) {
    Map<Vec3, Integer> places = new HashMap<>();
    Map<Long, Integer> edges = new HashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int i = 0; i < 3; i++) {
        long a = place(mesh, t, i, places);
        long b = place(mesh, t, (i + 1) % 3, places);
        if (a != b) {
          edges.merge(a << 32 | b, 1, Integer::sum);
          edges.merge(b << 32 | a, -1, Integer::sum);
        }
      }
    }
    return !mesh.isEmpty() && edges.values().stream().allMatch(n -> n == 0);
  }

  private static int place(Mesh mesh, int t, int i, Map<Vec3, Integer> places) {
    Vec3 p = mesh.point(t, i).plus(Vec3.ZERO); // −0 and 0 are one place
    int next = places.size();
    Integer known = places.putIfAbsent(p, next);
    return known == null ? next : known;
  }

  private static boolean isConvex(Mesh mesh) {
    if (mesh.triangleCount() > MOST_TRIED) {
      return false;
    }
    double noise = FLAT * mesh.bounds().size().length();
    double turned = mesh.volume() < 0 ? -1 : 1;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.areaNormal(t);
      double length = normal.length();
      for (int v = 0; length > 0 && v < mesh.vertexCount(); v++) {
        double out = mesh.vertex(v).minus(mesh.point(t, 0)).dot(normal) * turned / length;
        if (out > noise) {
          return false;
        }
      }
    }
    return true;
  }
}
