package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.underlee.drainage.DropGround.Triangle;
import org.underlee.geom.Vec3;

/** Triangles that close the holes of a sealed piece. */
final class DropPlugs {
  private DropPlugs() {}

  /** For the holes of its floor, its largest face. */
  static List<Triangle> of(List<Triangle> faces) {
    Triangle floor =
        faces.stream()
            .filter(t -> t.normal().z() > 0)
            .max(Comparator.comparingDouble(t -> t.normal().length()))
            .orElseThrow();
    Map<String, Vec3[]> edges = new TreeMap<>();
    for (Triangle t : faces) {
      double off = t.a().minus(floor.a()).dot(floor.normal()) / floor.normal().length();
      if (t.normal().z() > 0 && Math.abs(off) < 1e-5) {
        toggle(edges, t.a(), t.b());
        toggle(edges, t.b(), t.c());
        toggle(edges, t.c(), t.a());
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
        fan.add(new Triangle(floor.piece(), middle, q, p, floor.normal()));
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
}
