package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec3;

/** A polyline by the length along it, run on straight beyond its ends. */
final class Track {
  /** Ends nearer than this share of the length are one point. */
  private static final double CLOSED = 1e-9;

  private final List<Vec3> points;
  private final double[] lengths;

  /**
   * @throws IllegalArgumentException when all points are one
   */
  Track(List<Vec3> points) {
    this.points = Paths.apart(points, 0);
    this.lengths = new double[this.points.size()];
    for (int i = 1; i < lengths.length; i++) {
      lengths[i] = lengths[i - 1] + this.points.get(i).distance(this.points.get(i - 1));
    }
    if (lengths.length < 2) {
      throw new IllegalArgumentException("a curve without length");
    }
  }

  double length() {
    return lengths[lengths.length - 1];
  }

  boolean isClosed() {
    return points.get(0).distance(points.get(points.size() - 1)) <= CLOSED * length();
  }

  Vec3 at(double along) {
    int low = 0;
    int high = lengths.length - 1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (lengths[middle] <= along) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double share = (along - lengths[low]) / (lengths[high] - lengths[low]);
    return points.get(low).plus(points.get(high).minus(points.get(low)).times(share));
  }

  /** How far along the point nearest to {@code p} is. */
  double nearest(Vec3 p) {
    double best = Double.POSITIVE_INFINITY;
    double at = 0;
    int last = points.size() - 2;
    for (int i = 0; i <= last; i++) {
      Vec3 step = points.get(i + 1).minus(points.get(i));
      double share = p.minus(points.get(i)).dot(step) / step.dot(step);
      share = i == 0 && !isClosed() ? share : Math.max(0, share);
      share = i == last && !isClosed() ? share : Math.min(1, share);
      double distance = points.get(i).plus(step.times(share)).distance(p);
      if (distance < best) {
        best = distance;
        at = lengths[i] + share * step.length();
      }
    }
    return at;
  }

  /** The corners between two lengths; a closed line may be gone round once more. */
  List<Vec3> corners(double from, double to) {
    List<Vec3> corners = new ArrayList<>();
    for (double turn : isClosed() ? new double[] {0, length()} : new double[] {0}) {
      for (int i = turn > 0 ? 1 : 0; i < lengths.length; i++) {
        if (lengths[i] + turn > from && lengths[i] + turn < to) {
          corners.add(points.get(i));
        }
      }
    }
    return corners;
  }
}
