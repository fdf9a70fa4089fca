package org.underlee.picture;

import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * From the model to samples on the screen. In view coordinates x runs right, y up and z to the
 * viewer, metres from the place looked at. The depth {@code z / (1 - z / eye distance)} is linear
 * on the screen for a parallel projection and for an eye alike, and greater is nearer.
 *
 * <p>Written in plain numbers: millions of places go through for each picture.
 */
final class Projection {
  /** What is nearer to the eye than this share of its distance is cut off. */
  private static final double NEAR = 0.01;

  /**
   * Corners are rounded to 1/256 of a sample: enough for any eye, and rounding noise of a model far
   * from the origin does not reach the picture.
   */
  static final int SUBSAMPLES = 256;

  private final Transform frame;
  private final Vec3 shift;
  private final Vec3 toEye;
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
    toEye = frame.z().minus(frame.direction(shift).times(nearness));
    samplesPerMetre = height / camera.height();
    middleX = width / 2.0;
    middleY = height / 2.0;
  }

  double viewX(double x, double y, double z) {
    return along(frame.x(), x, y, z) + shift.x();
  }

  double viewY(double x, double y, double z) {
    return along(frame.y(), x, y, z) + shift.y();
  }

  double viewZ(double x, double y, double z) {
    return along(frame.z(), x, y, z) + shift.z();
  }

  /** Three numbers of a model place to three of the view. */
  void toView(double[] xyz, int from, double[] view, int to) {
    double x = xyz[from];
    double y = xyz[from + 1];
    double z = xyz[from + 2];
    view[to] = viewX(x, y, z);
    view[to + 1] = viewY(x, y, z);
    view[to + 2] = viewZ(x, y, z);
  }

  /** Three numbers of a direction in the model, times a factor, to those in the view. */
  void directionToView(double[] xyz, int from, double factor, double[] view) {
    double x = factor * xyz[from];
    double y = factor * xyz[from + 1];
    double z = factor * xyz[from + 2];
    view[0] = along(frame.x(), x, y, z);
    view[1] = along(frame.y(), x, y, z);
    view[2] = along(frame.z(), x, y, z);
  }

  private static double along(Vec3 axis, double x, double y, double z) {
    return axis.x() * x + axis.y() * y + axis.z() * z;
  }

  /** Above zero in front of the near plane. */
  double beforeNear(double viewZ) {
    return 1 - viewZ * nearness - NEAR;
  }

  /** How much larger than at the place looked at things appear. */
  double magnification(double viewZ) {
    return 1 / (1 - viewZ * nearness);
  }

  /** The same of a depth. */
  double magnificationAtDepth(double depth) {
    return 1 + depth * nearness;
  }

  /** From the left, in 1/256 of a sample, not yet rounded. */
  double screenX(double viewX, double larger) {
    return (middleX + viewX * (samplesPerMetre * larger)) * SUBSAMPLES;
  }

  /** From the top, in 1/256 of a sample, not yet rounded. */
  double screenY(double viewY, double larger) {
    return (middleY - viewY * (samplesPerMetre * larger)) * SUBSAMPLES;
  }

  /** Three numbers of the view to x, y in samples and depth on the screen. */
  void toScreen(double[] view, int from, double[] screen, int to) {
    double larger = magnification(view[from + 2]);
    screen[to] = Math.rint(screenX(view[from], larger)) / SUBSAMPLES;
    screen[to + 1] = Math.rint(screenY(view[from + 1], larger)) / SUBSAMPLES;
    screen[to + 2] = view[from + 2] * larger;
  }

  /**
   * Cosine of the angle between a face's normal and the line to the eye.
   *
   * @param oneSided when any number below zero will do for a face that looks away
   */
  double facing(SurfaceModel model, int face, boolean oneSided) {
    int place = 3 * model.corners[3 * face];
    double x = toEye.x() - model.xyz[place] * nearness;
    double y = toEye.y() - model.xyz[place + 1] * nearness;
    double z = toEye.z() - model.xyz[place + 2] * nearness;
    double[] normals = model.normals;
    double dot = normals[3 * face] * x + normals[3 * face + 1] * y + normals[3 * face + 2] * z;
    return oneSided && dot < 0 ? dot : dot / Math.sqrt(x * x + y * y + z * z);
  }

  /**
   * Writes a {@link DepthPlane} through a place. Unlike a plane through rounded corners, it is the
   * same for all triangles of one plane, whatever their corners.
   *
   * <p>With {@code n·p = d} in the view, the depth {@code w} at the screen place {@code X, Y}
   * (metres at the place looked at) keeps {@code n.x·X + n.y·Y + n.z·w = d·(1 + w·nearness)}.
   *
   * @param normal in view coordinates
   * @param place where the three numbers of the place begin
   * @param to where those of the plane go
   */
  void plane(double[] normal, double[] xyz, int place, double[] to, int at) {
    double x = xyz[place];
    double y = xyz[place + 1];
    double z = xyz[place + 2];
    double d = normal[0] * viewX(x, y, z) + normal[1] * viewY(x, y, z) + normal[2] * viewZ(x, y, z);
    double toEye = normal[2] - d * nearness;
    double stepX = -normal[0] / (toEye * samplesPerMetre);
    double stepY = normal[1] / (toEye * samplesPerMetre);
    to[at] = d / toEye - stepX * middleX - stepY * middleY;
    to[at + 1] = stepX;
    to[at + 2] = stepY;
  }

  double metresPerSample() {
    return 1 / samplesPerMetre;
  }
}
