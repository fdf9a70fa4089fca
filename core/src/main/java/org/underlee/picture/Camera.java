package org.underlee.picture;

import org.underlee.geom.Box;
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
  /** Share of the picture left free around the fitted box. */
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
   * A parallel projection that holds the whole box.
   *
   * @param direction from the box to the viewer
   * @param aspect width of the picture over its height
   * @throws IllegalArgumentException when the box is empty
   */
  public static Camera lookingFrom(Vec3 direction, Box bounds, double aspect) {
    Span span = Span.of(axes(direction, bounds), bounds, 0, 0);
    double height = Math.max(span.height(), span.width() / aspect);
    return new Camera(span.centred(), fitted(height), Double.POSITIVE_INFINITY);
  }

  /** As {@link #lookingFrom}, from an eye at the least distance that shows the whole box. */
  public static Camera perspective(Vec3 direction, Box bounds, double aspect) {
    double across = PERSPECTIVE_TANGENT * aspect;
    Span span = Span.of(axes(direction, bounds), bounds, across, PERSPECTIVE_TANGENT);
    double distance =
        fitted(Math.max(span.width() / across, span.height() / PERSPECTIVE_TANGENT) / 2);
    return new Camera(span.centred(), 2 * distance * PERSPECTIVE_TANGENT, distance);
  }

  /** As a person on the patio sees it, looking up at an angle; parallel. */
  public static Camera fromBelow(Box bounds, double aspect) {
    return lookingFrom(BELOW, bounds, aspect);
  }

  /** From above at an angle; parallel. */
  public static Camera fromAbove(Box bounds, double aspect) {
    return lookingFrom(ABOVE, bounds, aspect);
  }

  /** Straight down, with y up the picture. */
  public static Camera plan(Box bounds, double aspect) {
    return lookingFrom(Vec3.Z, bounds, aspect);
  }

  private static double fitted(double size) {
    return Math.max(size, SMALLEST) * (1 + 2 * MARGIN);
  }

  private static Transform axes(Vec3 direction, Box bounds) {
    if (bounds.isEmpty()) {
      throw new IllegalArgumentException("there is nothing to look at: the box is empty");
    }
    Vec3 toViewer = direction.unit();
    Vec3 right = Vec3.Z.cross(toViewer);
    if (right.length() < VERTICAL) {
      right = Vec3.Y.cross(toViewer);
    }
    return Transform.frame(bounds.centre(), toViewer, right);
  }

  /**
   * The picture area that a box covers. For an eye, each border is a plane that leans by its
   * tangent; sliding it until it touches the box gives the tightest fit in closed form.
   */
  private record Span(Transform axes, double left, double right, double low, double high) {
    static Span of(Transform axes, Box box, double leanAcross, double leanUp) {
      double[] reach = new double[4];
      java.util.Arrays.fill(reach, Double.NEGATIVE_INFINITY);
      for (int i = 0; i < 8; i++) {
        Vec3 p = axes.toLocal(corner(box, i));
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

    private static Vec3 corner(Box box, int i) {
      return new Vec3(
          (i & 1) == 0 ? box.min().x() : box.max().x(),
          (i & 2) == 0 ? box.min().y() : box.max().y(),
          (i & 4) == 0 ? box.min().z() : box.max().z());
    }
  }
}
