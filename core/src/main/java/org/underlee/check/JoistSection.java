package org.underlee.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.geom.Interval;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * What is left of a drawn joist where a plane across it cuts it.
 *
 * @param depth from its lowest to its highest place, metres
 * @param hole the highest opening between, metres; 0 where it is whole
 */
record JoistSection(double depth, double hole) {
  /** What a cut through a sawn joist may take of its depth: IRC R502.8.1. */
  record Most(double notch, double endNotch, double hole) {
    private static final double NOTCH = 1.0 / 6;
    private static final double END_NOTCH = 1.0 / 4;
    private static final double HOLE = 1.0 / 3;

    static Most of(double depth) {
      return new Most(depth * NOTCH, depth * END_NOTCH, depth * HOLE);
    }
  }

  /**
   * The section at a station along the joist.
   *
   * @param corners of the mesh, in the field's frame
   * @param v the station
   */
  static JoistSection at(Mesh mesh, Vec3[] corners, double v) {
    List<Interval> sides = sides(mesh, corners, v);
    double from = Double.POSITIVE_INFINITY;
    double upTo = Double.NEGATIVE_INFINITY;
    double hole = 0;
    for (Interval side : sides) {
      hole = from > side.from() ? hole : Math.max(hole, side.from() - upTo);
      from = Math.min(from, side.from());
      upTo = Math.max(upTo, side.to());
    }
    return new JoistSection(upTo - from, hole);
  }

  /** Heights of the surface in the plane, triangle by triangle, lowest first. */
  private static List<Interval> sides(Mesh mesh, Vec3[] corners, double v) {
    List<Interval> sides = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Interval side = new Interval(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
      for (int k = 0; k < 3; k++) {
        Vec3 a = corners[mesh.corner(t, k)];
        Vec3 b = corners[mesh.corner(t, (k + 1) % 3)];
        if ((a.y() - v) * (b.y() - v) < 0) {
          double z = a.z() + (b.z() - a.z()) * (v - a.y()) / (b.y() - a.y());
          side = new Interval(Math.min(side.from(), z), Math.max(side.to(), z));
        }
      }
      if (!side.isEmpty()) {
        sides.add(side);
      }
    }
    sides.sort(Comparator.comparingDouble(Interval::from));
    return sides;
  }
}
