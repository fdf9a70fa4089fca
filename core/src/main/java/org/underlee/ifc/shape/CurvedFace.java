package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * Cuts a bounded part of a curved surface into triangles. The bounds are drawn in the plane of the
 * surface's parameters; where they go round the surface, it is cut open between them or up to its
 * pole. {@link FaceTriangles} does the rest.
 */
final class CurvedFace {
  /** Points of a cut from one bound to the other. */
  private static final int SEAM_STEPS = 32;

  private final ParametricSurface surface;
  private final boolean sameSense;

  private CurvedFace(ParametricSurface surface, boolean sameSense) {
    this.surface = surface;
    this.sameSense = sameSense;
  }

  /**
   * Adds a face's triangles, in the sense in which its bounds run.
   *
   * @param bounds closed rings of points on the surface; none for the whole of a sphere
   * @param sameSense whether the face looks where the surface's normal does
   * @throws IllegalArgumentException when the bounds are none of a face on this surface
   */
  static void add(
      ParametricSurface surface, List<List<Vec3>> bounds, boolean sameSense, MeshBuilder builder) {
    List<List<Vec3>> rings =
        bounds.stream().map(CurvedFace::withoutSpikes).filter(r -> r.size() > 2).toList();
    new CurvedFace(surface, sameSense).add(rings, builder);
  }

  /** Without seams that a bound runs out and straight back on. */
  private static List<Vec3> withoutSpikes(List<Vec3> ring) {
    List<Vec3> kept = new ArrayList<>();
    for (Vec3 p : ring) {
      int n = kept.size();
      if (n > 1 && kept.get(n - 2).equals(p)) {
        kept.remove(n - 1);
      } else if (n == 0 || !kept.get(n - 1).equals(p)) {
        kept.add(p);
      }
    }
    while (kept.size() > 2 && kept.get(1).equals(kept.get(kept.size() - 1))) {
      kept.remove(0);
      kept.remove(kept.size() - 1);
    }
    return kept;
  }

  private void add(List<List<Vec3>> bounds, MeshBuilder builder) {
    List<FaceRing> rings = bounds.stream().map(r -> FaceRing.of(surface, r)).toList();
    boolean round = rings.stream().anyMatch(r -> r.turns() != 0);
    if (!round && surface.vPeriod() > 0) {
      ParametricSurface exchanged = new ParametricSurface.Exchanged(surface);
      List<FaceRing> across = bounds.stream().map(r -> FaceRing.of(exchanged, r)).toList();
      if (across.stream().anyMatch(r -> r.turns() != 0)) {
        new CurvedFace(exchanged, !sameSense).fill(across, builder);
        return;
      }
    }
    fill(rings, builder);
  }

  private void fill(List<FaceRing> rings, MeshBuilder builder) {
    List<FaceRing> plain = new ArrayList<>();
    List<FaceRing> round = new ArrayList<>();
    rings.forEach(r -> (r.turns() == 0 ? plain : round).add(r));
    plain.sort(Comparator.comparing(r -> -Math.abs(Outline.signedArea(r.uv()))));
    FaceRing outer =
        switch (round.size()) {
          case 0 -> plain.isEmpty() ? whole() : plain.remove(0);
          case 1 -> upToPole(round.get(0));
          case 2 -> between(round.get(0), round.get(1), plain);
          default ->
              throw new IllegalArgumentException(round.size() + " bounds go round its surface");
        };
    List<FaceRing> holes = plain.stream().map(hole -> inside(hole, outer)).toList();
    FaceTriangles.add(surface, outer, holes, builder);
  }

  /** A hole with full turns added so that it lies where the outer bound does. */
  private FaceRing inside(FaceRing hole, FaceRing outer) {
    double low = outer.uv().stream().mapToDouble(Vec2::x).min().orElse(0);
    double start = hole.uv().stream().mapToDouble(Vec2::x).min().orElse(0);
    double period = surface.uPeriod();
    double u = period > 0 ? -period * Math.floor((start - low) / period) : 0;
    double v = FaceRing.nearest(hole.middle(false), outer.middle(false), surface.vPeriod());
    return hole.shifted(u, v - hole.middle(false));
  }

  /** A sphere from pole to pole. */
  private FaceRing whole() {
    if (surface.poles().size() != 2 || !(surface.uPeriod() > 0)) {
      throw new IllegalArgumentException("it has no bounds");
    }
    double south = surface.poles().get(0);
    double north = surface.poles().get(1);
    Vec2 start = new Vec2(0, south);
    List<FaceRing.Corner> seam = seam(start, new Vec2(0, north));
    List<FaceRing.Corner> corners = new ArrayList<>();
    corners.addAll(FaceRing.alongPole(surface, south, 0, surface.uPeriod()));
    seam.forEach(c -> corners.add(c.shifted(surface.uPeriod(), 0)));
    corners.addAll(FaceRing.alongPole(surface, north, surface.uPeriod(), 0));
    java.util.Collections.reverse(seam);
    corners.addAll(seam);
    FaceRing ring = new FaceRing(corners, 0);
    return sameSense ? ring : ring.reversed();
  }

  /** What lies between a bound that goes round and the pole on its left. */
  private FaceRing upToPole(FaceRing ring) {
    List<Double> poles = surface.poles();
    if (poles.isEmpty() || Math.abs(ring.turns()) != 1) {
      throw new IllegalArgumentException("its only bound goes round its surface");
    }
    boolean high = ring.turns() > 0 == sameSense;
    double pole = poles.get(high ? poles.size() - 1 : 0);
    Vec2 first = ring.corners().get(0).uv();
    double turn = ring.turns() * surface.uPeriod();
    List<FaceRing.Corner> seam = seam(first, new Vec2(first.x(), pole));
    List<FaceRing.Corner> corners = new ArrayList<>(ring.corners());
    corners.add(ring.corners().get(0).shifted(turn, 0));
    seam.forEach(c -> corners.add(c.shifted(turn, 0)));
    corners.addAll(FaceRing.alongPole(surface, pole, first.x() + turn, first.x()));
    java.util.Collections.reverse(seam);
    corners.addAll(seam);
    return new FaceRing(corners, 0);
  }

  /** The band between two bounds that go round, cut open where no hole is. */
  private FaceRing between(FaceRing one, FaceRing other, List<FaceRing> holes) {
    if (Math.abs(one.turns()) != 1 || Math.abs(other.turns()) != 1) {
      throw new IllegalArgumentException("its bounds go round its surface more than once");
    }
    double period = surface.uPeriod();
    FaceRing a = one.startingAt(clearOf(one, holes), period);
    FaceRing back = one.turns() == other.turns() ? other.reversed() : other;
    Vec2 start = a.corners().get(0).uv();
    FaceRing b = back.startingAt(nearestTo(start.x(), back), period);
    Vec2 far = b.corners().get(0).uv();
    double u = FaceRing.nearest(far.x(), start.x(), period) - far.x();
    double v = FaceRing.nearest(far.y(), start.y(), surface.vPeriod()) - far.y();
    FaceRing placed = b.shifted(u, v);
    double turn = a.turns() * period;
    List<FaceRing.Corner> seam = seam(start, placed.corners().get(0).uv());
    List<FaceRing.Corner> corners = new ArrayList<>(a.corners());
    corners.add(a.corners().get(0).shifted(turn, 0));
    seam.forEach(c -> corners.add(c.shifted(turn, 0)));
    placed.corners().forEach(c -> corners.add(c.shifted(turn, 0)));
    corners.add(placed.corners().get(0));
    java.util.Collections.reverse(seam);
    corners.addAll(seam);
    return new FaceRing(corners, 0);
  }

  /** The corner of a bound where u is no hole's. */
  private int clearOf(FaceRing ring, List<FaceRing> holes) {
    for (int i = 0; i < ring.corners().size(); i++) {
      double u = ring.corners().get(i).uv().x();
      if (holes.stream().noneMatch(hole -> spans(hole, u))) {
        return i;
      }
    }
    return 0;
  }

  private boolean spans(FaceRing hole, double u) {
    double low = hole.uv().stream().mapToDouble(Vec2::x).min().orElse(0);
    double high = hole.uv().stream().mapToDouble(Vec2::x).max().orElse(0);
    double period = surface.uPeriod();
    double there = u - period * Math.floor((u - low) / period);
    return there <= high;
  }

  private int nearestTo(double u, FaceRing ring) {
    int nearest = 0;
    double best = Double.POSITIVE_INFINITY;
    for (int i = 0; i < ring.corners().size(); i++) {
      double there = ring.corners().get(i).uv().x();
      double off = Math.abs(FaceRing.nearest(there, u, surface.uPeriod()) - u);
      if (off < best) {
        best = off;
        nearest = i;
      }
    }
    return nearest;
  }

  /** Points on the way from one place to another, without its ends. */
  private List<FaceRing.Corner> seam(Vec2 from, Vec2 to) {
    List<FaceRing.Corner> seam = new ArrayList<>();
    for (int i = 1; i < SEAM_STEPS; i++) {
      Vec2 uv = from.plus(to.minus(from).times((double) i / SEAM_STEPS));
      seam.add(new FaceRing.Corner(uv, surface.at(uv)));
    }
    return seam;
  }
}
