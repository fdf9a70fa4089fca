package org.underlee.bay;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Box;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * The space that a bay's assembly may need: between the joist faces, from {@link #BELOW} under the
 * joists to their tops. A convex body of six planes in the field's frame.
 */
final class BaySpace {
  /**
   * How far below the joists an assembly may hang: a rail leg's reach and the gutter's upper part
   * (common practice). What is deeper is met by the gutter and the downspouts only.
   */
  private static final double BELOW = 0.15;

  /** Things that touch the bay's faces are not in it. */
  private static final double SKIN = 0.002;

  private record Plane(Vec3 normal, double offset) {
    double side(Vec3 p) {
      return normal.dot(p) - offset;
    }
  }

  private final List<Plane> planes;
  private final Box bounds;

  BaySpace(Bay bay) {
    Interval v = new Interval(bay.stretch().from() + SKIN, bay.stretch().to() - SKIN);
    double low = Math.min(bay.joistBottom(v.from()), bay.joistBottom(v.to())) - BELOW;
    double high = Math.min(bay.joistTop(v.from()), bay.joistTop(v.to())) - SKIN;
    // where the width steps, all of the wider part
    Linear left = bay.leftFace().plus(-bay.standOffLeft());
    Linear right = bay.rightFace().plus(bay.standOffRight());
    planes =
        List.of(
            new Plane(Vec3.Y, v.from()),
            new Plane(Vec3.Y.negated(), -v.to()),
            new Plane(Vec3.Z, low),
            new Plane(Vec3.Z.negated(), -high),
            new Plane(new Vec3(1, -left.slope(), 0), left.at0() + SKIN),
            new Plane(new Vec3(-1, right.slope(), 0), SKIN - right.at0()));
    Box box = Box.EMPTY;
    for (double station : new double[] {v.from(), v.to()}) {
      box = box.with(new Vec3(left.at(station), station, low));
      box = box.with(new Vec3(right.at(station), station, high));
    }
    bounds = box;
  }

  /** The world box around the space. */
  Box worldBounds(Transform frame) {
    return bounds.moved(frame);
  }

  /** The box, in the field's frame, around what lies of a surface inside the space. */
  Box inside(Mesh mesh, Transform frame) {
    Vec3[] local = new Vec3[mesh.vertexCount()];
    for (int i = 0; i < local.length; i++) {
      local[i] = frame.toLocal(mesh.vertex(i));
    }
    Box found = Box.EMPTY;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      List<Vec3> piece =
          List.of(local[mesh.corner(t, 0)], local[mesh.corner(t, 1)], local[mesh.corner(t, 2)]);
      for (Plane plane : planes) {
        piece = piece.isEmpty() ? piece : clipped(piece, plane);
      }
      for (Vec3 p : piece) {
        found = found.with(p);
      }
    }
    return found;
  }

  /** One plane of Sutherland and Hodgman's clipping, "Reentrant polygon clipping", 1974. */
  private static List<Vec3> clipped(List<Vec3> ring, Plane plane) {
    List<Vec3> kept = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      Vec3 a = ring.get(i);
      Vec3 b = ring.get((i + 1) % ring.size());
      double da = plane.side(a);
      double db = plane.side(b);
      if (da >= 0) {
        kept.add(a);
      }
      if (da >= 0 != db >= 0) {
        kept.add(a.plus(b.minus(a).times(da / (da - db))));
      }
    }
    return kept;
  }
}
