package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.underlee.geom.Vec3;

/** Open polylines in space, as something is swept along them. */
final class Paths {
  private Paths() {}

  /**
   * The part between two parameters, each the number of a point from 0 and what share of the way to
   * the next; backwards when {@code to < from}.
   */
  static List<Vec3> part(List<Vec3> points, double from, double to) {
    double low = Math.max(0, Math.min(from, to));
    double high = Math.min(points.size() - 1.0, Math.max(from, to));
    if (!(low < high)) {
      throw new IllegalArgumentException("nothing of a curve lies from " + from + " to " + to);
    }
    List<Vec3> part = new ArrayList<>(List.of(at(points, low)));
    for (int i = (int) Math.floor(low) + 1; i < high; i++) {
      part.add(points.get(i));
    }
    part.add(at(points, high));
    if (to < from) {
      Collections.reverse(part);
    }
    return part;
  }

  private static Vec3 at(List<Vec3> points, double t) {
    int i = (int) Math.min(Math.floor(t), points.size() - 2.0);
    return points.get(i).plus(points.get(i + 1).minus(points.get(i)).times(t - i));
  }

  /** The points with those left out that are no further than {@code near} from the last. */
  static List<Vec3> apart(List<Vec3> points, double near) {
    List<Vec3> kept = new ArrayList<>();
    for (Vec3 p : points) {
      if (kept.isEmpty() || p.distance(kept.get(kept.size() - 1)) > near) {
        kept.add(p);
      }
    }
    return kept;
  }
}
