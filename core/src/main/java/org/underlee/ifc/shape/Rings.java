package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/** Closed rings of plane points, without repeated points. */
final class Rings {
  /** Points nearer than this share of the ring's size are one: below any drawing accuracy. */
  private static final double SAME = 1e-9;

  private Rings() {}

  /** The ring of a curve's points, seen along z. */
  static List<Vec2> ring(StepInstance owner, List<Vec3> points) {
    double size = 0;
    for (Vec3 p : points) {
      size = Math.max(size, p.distance(points.get(0)));
    }
    List<Vec2> ring = new ArrayList<>();
    for (Vec3 p : points) {
      Vec2 q = new Vec2(p.x(), p.y());
      if (ring.isEmpty() || apart(q, ring.get(ring.size() - 1), size)) {
        ring.add(q);
      }
    }
    while (ring.size() > 1 && !apart(ring.get(0), ring.get(ring.size() - 1), size)) {
      ring.remove(ring.size() - 1);
    }
    requireArea(owner, ring, size);
    return ring;
  }

  private static boolean apart(Vec2 a, Vec2 b, double size) {
    return a.minus(b).length() > SAME * size;
  }

  private static void requireArea(StepInstance owner, List<Vec2> ring, double size) {
    if (ring.size() < 3 || Math.abs(Outline.signedArea(ring)) <= SAME * size * size) {
      throw Unreadable.degenerate(owner, "the outline encloses no area");
    }
  }
}
