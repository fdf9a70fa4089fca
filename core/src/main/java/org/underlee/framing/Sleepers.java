package org.underlee.framing;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Vec3;

/**
 * Bars that look like joists but lie on something all along: on a slab, or across joists. There is
 * no space below them to drain.
 */
final class Sleepers {
  /** A bar lies on a surface to within this: shims, pads, drawing accuracy. */
  private static final double BEARING_GAP = 0.015;

  /** Sleepers are no deeper than this share of the joists below them; joists on beams are. */
  private static final double SHALLOW = 0.6;

  /** A slab is at least this thick; a ceiling sheet under joists is thinner. */
  private static final double THINNEST_SLAB = 0.05;

  /** A slab's top has at least this area in square metres; a beam's or a board's is smaller. */
  private static final double SMALLEST_TOP = 1.0;

  /** A slab's top falls less than this (cosine of 5°). */
  private static final double LEVEL_TOP = 0.9962;

  /** Places along a bar that must lie on the slab, as shares of its length from the middle. */
  private static final double[] PLACES = {-0.4, 0, 0.4};

  private record Slab(Mesh mesh, Box bounds) {}

  private Sleepers() {}

  /** Whether {@code bar} lies across the top of a deeper bar. */
  static boolean liesAcross(OrientedBox bar, OrientedBox below) {
    return Math.abs(bar.bottom() - below.top()) <= BEARING_GAP
        && bar.depth() <= SHALLOW * below.depth();
  }

  /** The level bars that lie on a slab, whatever class the slab has. */
  static Set<Member> onSlabs(List<Member> level, List<BuildingElement> elements) {
    STRtree slabs = new STRtree();
    elements.parallelStream()
        .filter(e -> isSlab(e.shape()))
        .map(e -> new Slab(e.shape(), e.shape().bounds()))
        .toList()
        .forEach(s -> slabs.insert(envelope(s.bounds), s));
    slabs.build();
    return level.parallelStream()
        .filter(m -> isOnOneOf(slabs, m))
        .collect(Collectors.toUnmodifiableSet());
  }

  private static boolean isOnOneOf(STRtree slabs, Member m) {
    boolean[] found = {false};
    slabs.query(
        envelope(m.box().bounds()),
        hit -> {
          Slab slab = (Slab) hit;
          found[0] |= liesOn(m.box(), slab) && !m.element().shape().equals(slab.mesh);
        });
    return found[0];
  }

  private static Envelope envelope(Box box) {
    return new Envelope(box.min().x(), box.max().x(), box.min().y(), box.max().y());
  }

  /** Whether it is thick and has a level top of a square metre. */
  private static boolean isSlab(Mesh mesh) {
    double twice = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.areaNormal(t);
      twice += normal.z() >= LEVEL_TOP * normal.length() ? normal.z() : 0;
    }
    return twice / 2 >= SMALLEST_TOP && mesh.bounds().size().z() >= THINNEST_SLAB;
  }

  private static boolean liesOn(OrientedBox bar, Slab slab) {
    if (!slab.bounds.meets(bar.bounds().grown(BEARING_GAP))) {
      return false;
    }
    for (double share : PLACES) {
      Vec3 under =
          bar.centre()
              .plus(bar.axis().times(share * bar.length()))
              .minus(Vec3.Z.times(bar.depth() / 2));
      if (!isOnTop(under, slab.mesh)) {
        return false;
      }
    }
    return true;
  }

  /** Whether a surface of the mesh that faces up passes just at a place. */
  private static boolean isOnTop(Vec3 p, Mesh mesh) {
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.areaNormal(t);
      if (normal.z() > 0 && isOver(p, mesh, t)) {
        Vec3 d = p.minus(mesh.point(t, 0));
        if (Math.abs(d.dot(normal)) <= BEARING_GAP * normal.length()) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether a place lies over a triangle that faces up, seen from above. */
  private static boolean isOver(Vec3 p, Mesh mesh, int t) {
    for (int k = 0; k < 3; k++) {
      Vec3 a = mesh.point(t, k);
      Vec3 side = mesh.point(t, (k + 1) % 3).minus(a);
      Vec3 d = p.minus(a);
      if (side.x() * d.y() - side.y() * d.x() < 0) {
        return false;
      }
    }
    return true;
  }
}
