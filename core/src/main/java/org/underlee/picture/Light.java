package org.underlee.picture;

import org.underlee.geom.Vec3;

/**
 * A soft light by the viewer's left shoulder, and an even light from all around. It moves with the
 * viewer, so the underside of a deck is as clear from below as its top from above.
 */
final class Light {
  private static final Vec3 KEY = new Vec3(-0.5, 0.12, 0.86).unit();
  private static final double AMBIENT = 0.6;
  private static final double STRENGTH = 0.46;

  private Light() {}

  /** How bright a surface is; its normal, in view coordinates, faces the viewer. */
  static double on(double[] normal) {
    double toward = normal[0] * KEY.x() + normal[1] * KEY.y() + normal[2] * KEY.z();
    return AMBIENT + STRENGTH * Math.max(0, toward);
  }
}
