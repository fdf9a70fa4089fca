package org.underlee.layout;

import java.util.List;
import org.underlee.geom.Vec3;

/**
 * Where outlets are along a field's gutter, and where they may be.
 *
 * @param start the end at the field's first joist, at the rim, world metres
 * @param end the other end
 * @param outlets metres from the start, ascending
 * @param posts places beside posts, for a downspout to be fixed to, likewise
 */
public record GutterPlaces(Vec3 start, Vec3 end, List<Double> outlets, List<Double> posts) {
  public GutterPlaces {
    outlets = List.copyOf(outlets);
    posts = List.copyOf(posts);
  }

  public double length() {
    return end.minus(start).length();
  }

  /** How far along it a world place is, metres from the start. */
  public double along(Vec3 place) {
    return place.minus(start).dot(end.minus(start)) / length();
  }

  /** Which of its outlets, counted from 0, is nearest to a world place. */
  public int nearest(Vec3 place) {
    double at = along(place);
    int best = 0;
    for (int i = 1; i < outlets.size(); i++) {
      best = Math.abs(outlets.get(i) - at) < Math.abs(outlets.get(best) - at) ? i : best;
    }
    return best;
  }

  /** The world place so many metres from the start. */
  public Vec3 at(double metres) {
    return start.plus(end.minus(start).times(metres / length()));
  }
}
