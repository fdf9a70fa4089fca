package org.underlee.clash;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;

/**
 * What a hinged leaf sweeps: a sector of a circle, as thick as the leaf is high. The arc is drawn
 * as chords that lie outside of it, by less than 0.3 % of the radius, so that nothing is missed.
 */
public final class Sweep {
  /** Chords of 7.5°: 1 / cos(3.75°) is 1.0021. */
  private static final double STEP = Math.toRadians(7.5);

  private Sweep() {}

  /**
   * The room of a leaf.
   *
   * @param frame the hinge is along its z axis, the sector in its x-y plane
   * @param radius metres
   * @param from degrees from x towards y; {@code to} is up to 180 more
   * @param height metres
   */
  public static Solid of(Transform frame, double radius, double from, double to, double height) {
    double turn = Math.toRadians(to - from);
    int chords = (int) Math.ceil(turn / STEP - 1e-9);
    double step = turn / chords;
    List<Vec2> ring = new ArrayList<>();
    ring.add(new Vec2(0, 0));
    ring.add(at(radius, Math.toRadians(from)));
    for (int i = 0; i < chords; i++) {
      ring.add(at(radius / Math.cos(step / 2), Math.toRadians(from) + (i + 0.5) * step));
    }
    ring.add(at(radius, Math.toRadians(to)));
    return Solid.of(Extrusion.straight(frame, new Outline(ring, List.of()), height).mesh());
  }

  private static Vec2 at(double radius, double angle) {
    return new Vec2(radius * Math.cos(angle), radius * Math.sin(angle));
  }
}
