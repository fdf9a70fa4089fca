package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * A line of straight pieces in space. The standard does not say how sections go round a corner:
 * they are mitred, as those of other sweeps are, which keeps the volume of section × length.
 */
final class Polyline implements Alignment {
  /** Steps shorter than this share of the whole are one point. */
  private static final double SAME = 1e-9;

  /** Mitres sharper than this cosine of half the turn would run out far beyond the corner. */
  private static final double SHARPEST = 0.05;

  private final List<Vec3> points;
  private final double[] lengths;

  Polyline(StepInstance curve, List<Vec3> given) {
    double size = 0;
    for (Vec3 p : given) {
      size = Math.max(size, p.distance(given.get(0)));
    }
    points = Paths.apart(given, SAME * size);
    lengths = new double[points.size()];
    for (int i = 1; i < lengths.length; i++) {
      lengths[i] = lengths[i - 1] + points.get(i).distance(points.get(i - 1));
    }
    if (lengths.length < 2) {
      throw Unreadable.degenerate(curve, "nothing can stand along a curve without length");
    }
    for (int i = 1; i + 1 < lengths.length; i++) {
      if (way(i).plus(way(i + 1)).length() < 2 * SHARPEST) {
        throw Unreadable.degenerate(curve, "it turns back on itself");
      }
    }
  }

  /** Along the piece that ends in a point. */
  private Vec3 way(int end) {
    return points.get(end).minus(points.get(end - 1)).unit();
  }

  @Override
  public Station at(double length) {
    int end = 1;
    while (end + 1 < lengths.length && length > lengths[end]) {
      end++;
    }
    Vec3 way = way(end);
    Vec3 point = points.get(end).minus(way.times(lengths[end] - length));
    boolean corner = end + 1 < lengths.length && length == lengths[end];
    return corner ? new Station(point, way, way.plus(way(end + 1)).unit()) : Station.on(point, way);
  }

  @Override
  public List<Double> corners() {
    List<Double> corners = new ArrayList<>();
    for (int i = 1; i + 1 < lengths.length; i++) {
      corners.add(lengths[i]);
    }
    return corners;
  }
}
