package org.underlee.drainage;

import java.util.Optional;
import org.underlee.geom.Vec3;

/**
 * Water that stands: in a low spot, or because an outlet is blocked. The surface is level.
 *
 * @param part that it stands in
 * @param blocked the outlet that is taken to be blocked
 * @param depth where it is deepest, metres
 * @param area of its surface, m²
 * @param volume m³
 * @param at the deepest place, world metres
 * @param spillsAt where it runs over, world metres
 * @param spillsTo the outlet or the leak that it then goes to, in words
 */
public record StandingWater(
    String part,
    Optional<String> blocked,
    double depth,
    double area,
    double volume,
    Vec3 at,
    Vec3 spillsAt,
    String spillsTo) {
  /** Of rain water. */
  private static final double KG_PER_M3 = 1000;

  /** Its mass, kg. */
  public double mass() {
    return volume * KG_PER_M3;
  }
}
