package org.underlee.picture;

import java.util.Arrays;
import java.util.List;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * Where a scene is seen from.
 *
 * @param frame rigid; its origin is the place looked at, in the middle of the picture; x goes to
 *     the right, y up the picture and z to the viewer
 * @param height metres between the lower and upper border, at the distance of the origin
 * @param eyeDistance metres from the origin to the eye; infinite for a parallel projection
 */
public record Camera(Transform frame, double height, double eyeDistance) {
  /** Share of the picture left free around the fitted points. */
  private static final double MARGIN = 0.04;

  /** Tangent of half the angle of view between lower and upper border: about 28° in all. */
  private static final double PERSPECTIVE_TANGENT = 0.25;

  /** Below this the viewer stands so near to straight above that "up" must be another axis. */
  private static final double VERTICAL = 1e-6;

  /** Never fit to less than this, so that a single point still has a picture. */
  private static final double SMALLEST = 0.001;

  private static final Vec3 ABOVE = new Vec3(-0.55, -0.75, 0.62);
  private static final Vec3 BELOW = new Vec3(-0.42, -0.75, -0.52);

  /**
   * @throws IllegalArgumentException when height or distance is not above zero
   */
  public Camera {
    if (!(height > 0 && eyeDistance > 0)) {
      throw new IllegalArgumentException(
          "a camera needs a height and a distance above zero, got " + height + ", " + eyeDistance);
    }
  }

  /**
   * A parallel projection that holds all the points.
   *
   * @param direction from the points to the viewer
   * @param aspect width of the picture over its height
   * @throws IllegalArgumentException when there are no points
   */
  public static Camera lookingFrom(Vec3 direction, List<Vec3> points, double aspect) {
    Span span = Span.of(axes(direction, points), points, 0, 0);
    double height = Math.max(span.height(), span.width() / aspect);
    return new Camera(span.centred(), fitted(height), Double.POSITIVE_INFINITY);
  }

  /** As {@link #lookingFrom}, from an eye at the least distance that shows all the points. */
  public static Camera perspective(Vec3 direction, List<Vec3> points, double aspect) {
    double across = PERSPECTIVE_TANGENT * aspect;
    Span span = Span.of(axes(direction, points), points, across, PERSPECTIVE_TANGENT);
    double distance =
        fitted(Math.max(span.width() / across, span.height() / PERSPECTIVE_TANGENT) / 2);
    return new Camera(span.centred(), 2 * distance * PERSPECTIVE_TANGENT, distance);
  }

  /** As a person on the patio sees it, looking up at an angle; parallel. */
  public static Camera fromBelow(Scene scene, double aspect) {
    return lookingFrom(BELOW, scene.points(), aspect);
  }

  /** From above at an angle; parallel. */
  public static Camera fromAbove(Scene scene, double aspect) {
    return lookingFrom(ABOVE, scene.points(), aspect);
  }

  /** Straight down, with y up the picture. */
  public static Camera plan(Scene scene, double aspect) {
    return lookingFrom(Vec3.Z, scene.points(), aspect);
  }

  private static double fitted(double size) {
    return Math.max(size, SMALLEST) * (1 + 2 * MARGIN);
  }

  private static Transform axes(Vec3 direction, List<Vec3> points) {
    if (points.isEmpty()) {
      throw new IllegalArgumentException("there is nothing to look at: the scene has no points");
    }
    Vec3 toViewer = direction.unit();
    Vec3 right = Vec3.Z.cross(toViewer);
    if (right.length() < VERTICAL) {
      right = Vec3.Y.cross(toViewer);
    }
    return Transform.frame(points.get(0), toViewer, right);
  }

  /**
   * The picture area that points cover. For an eye, each border is a plane that leans by its
   * tangent; sliding it until it touches a point gives the tightest fit in closed form.
   */
  private record Span(Transform axes, double left, double right, double low, double high) {
    static Span of(Transform axes, List<Vec3> points, double leanAcross, double leanUp) {
      double[] reach = new double[4];
      Arrays.fill(reach, Double.NEGATIVE_INFINITY);
      for (Vec3 point : points) {
        Vec3 p = axes.toLocal(point);
        reach[0] = Math.max(reach[0], -p.x() + leanAcross * p.z());
        reach[1] = Math.max(reach[1], p.x() + leanAcross * p.z());
        reach[2] = Math.max(reach[2], -p.y() + leanUp * p.z());
        reach[3] = Math.max(reach[3], p.y() + leanUp * p.z());
      }
      return new Span(axes, -reach[0], reach[1], -reach[2], reach[3]);
    }

    double width() {
      return right - left;
    }

    double height() {
      return high - low;
    }

    Transform centred() {
      Vec3 shift = new Vec3((left + right) / 2, (low + high) / 2, 0);
      return new Transform(axes.apply(shift), axes.x(), axes.y(), axes.z());
    }
  }
}
