package org.underlee.picture;

import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * From the model to samples on the screen. In view coordinates x runs right, y up and z to the
 * viewer, metres from the place looked at. The depth {@code z / (1 - z / eye distance)} is linear
 * on the screen for a parallel projection and for an eye alike, and greater is nearer.
 */
final class Projection {
  /** What is nearer to the eye than this share of its distance is cut off. */
  private static final double NEAR = 0.01;

  /**
   * Corners are rounded to 1/256 of a sample: enough for any eye, and rounding noise of a model far
   * from the origin does not reach the picture.
   */
  private static final double SUBSAMPLES = 256;

  private final Transform frame;
  private final Vec3 shift;
  private final double nearness;
  private final double samplesPerMetre;
  private final double middleX;
  private final double middleY;

  /**
   * @param centre what the model's places are relative to
   * @param width of the picture in samples (likewise height)
   */
  Projection(Camera camera, Vec3 centre, int width, int height) {
    frame = camera.frame();
    shift = frame.toLocal(centre);
    nearness = 1 / camera.eyeDistance();
    samplesPerMetre = height / camera.height();
    middleX = width / 2.0;
    middleY = height / 2.0;
  }

  /** Three numbers of a model place to three of the view. */
  void toView(double[] xyz, double[] view, int at) {
    double x = xyz[at];
    double y = xyz[at + 1];
    double z = xyz[at + 2];
    view[at] = along(frame.x(), x, y, z) + shift.x();
    view[at + 1] = along(frame.y(), x, y, z) + shift.y();
    view[at + 2] = along(frame.z(), x, y, z) + shift.z();
  }

  Vec3 directionToView(double x, double y, double z) {
    return new Vec3(
        along(frame.x(), x, y, z), along(frame.y(), x, y, z), along(frame.z(), x, y, z));
  }

  private static double along(Vec3 axis, double x, double y, double z) {
    return axis.x() * x + axis.y() * y + axis.z() * z;
  }

  /** Above zero in front of the near plane. */
  double beforeNear(double[] view, int at) {
    return 1 - view[at + 2] * nearness - NEAR;
  }

  /** How much larger than at the place looked at things appear. */
  double magnification(double[] view, int at) {
    return 1 / (1 - view[at + 2] * nearness);
  }

  /** Three numbers of the view to x, y and depth on the screen. */
  void toScreen(double[] view, int from, double[] screen, int to) {
    double larger = magnification(view, from);
    double scale = samplesPerMetre * larger;
    screen[to] = rounded(middleX + view[from] * scale);
    screen[to + 1] = rounded(middleY - view[from + 1] * scale);
    screen[to + 2] = view[from + 2] * larger;
  }

  private static double rounded(double at) {
    return Math.rint(at * SUBSAMPLES) / SUBSAMPLES;
  }

  /**
   * Cosine of the angle between a direction in view coordinates and the line from a place to the
   * eye.
   */
  double facing(Vec3 normal, double[] view, int at) {
    double x = -view[at] * nearness;
    double y = -view[at + 1] * nearness;
    double z = 1 - view[at + 2] * nearness;
    double toEye = normal.x() * x + normal.y() * y + normal.z() * z;
    return toEye / Math.sqrt(x * x + y * y + z * z);
  }

  double metresPerSample() {
    return 1 / samplesPerMetre;
  }
}
