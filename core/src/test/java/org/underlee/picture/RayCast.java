package org.underlee.picture;

import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/** The slow and obvious way to tell what a pixel shows: a ray against every triangle. */
final class RayCast {
  /** A pixel is left open when another shape lies this close behind the first, metres. */
  private static final double TIE = 1e-3;

  /** A pixel is left open when a ray this far beside it, in pixels, meets another shape. */
  private static final double BESIDE = 1.0 / 64;

  /** The answer where rounding may go either way. */
  static final int OPEN = -1;

  private final Scene scene;
  private final Camera camera;
  private final RasterSettings settings;

  RayCast(Scene scene, Camera camera, RasterSettings settings) {
    this.scene = scene;
    this.camera = camera;
    this.settings = settings;
  }

  /** The id at a place in pixels from the upper left corner. */
  int id(double x, double y) {
    int id = ray(x, y);
    boolean same =
        id == ray(x - BESIDE, y - BESIDE)
            && id == ray(x + BESIDE, y - BESIDE)
            && id == ray(x - BESIDE, y + BESIDE)
            && id == ray(x + BESIDE, y + BESIDE);
    return same ? id : OPEN;
  }

  private int ray(double x, double y) {
    double metres = camera.height() / settings.height();
    Vec3 aim =
        camera
            .frame()
            .apply(
                new Vec3(
                    (x - settings.width() / 2.0) * metres,
                    (settings.height() / 2.0 - y) * metres,
                    0));
    Vec3 toViewer = camera.frame().z();
    boolean eye = Double.isFinite(camera.eyeDistance());
    Vec3 start =
        eye
            ? camera.frame().origin().plus(toViewer.times(camera.eyeDistance()))
            : aim.plus(toViewer.times(1000));
    Vec3 way = aim.minus(start).unit();
    double least = eye ? camera.eyeDistance() * 0.01 / -way.dot(toViewer) : 0;
    return nearest(start, way, least);
  }

  private int nearest(Vec3 start, Vec3 way, double least) {
    double first = Double.POSITIVE_INFINITY;
    double second = Double.POSITIVE_INFINITY;
    int id = 0;
    for (Shape shape : scene.shapes()) {
      double t = hit(shape.mesh(), start, way, least);
      if (t < first) {
        second = first;
        first = t;
        id = shape.id();
      } else {
        second = Math.min(second, t);
      }
    }
    return second - first < TIE ? OPEN : id;
  }

  private static double hit(Mesh mesh, Vec3 start, Vec3 way, double least) {
    double best = Double.POSITIVE_INFINITY;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      double at = hit(mesh.point(t, 0), mesh.point(t, 1), mesh.point(t, 2), start, way);
      if (at >= least && at < best) {
        best = at;
      }
    }
    return best;
  }

  /** Möller and Trumbore, "Fast, minimum storage ray/triangle intersection" (1997). */
  private static double hit(Vec3 a, Vec3 b, Vec3 c, Vec3 start, Vec3 way) {
    Vec3 ab = b.minus(a);
    Vec3 ac = c.minus(a);
    Vec3 p = way.cross(ac);
    double determinant = ab.dot(p);
    if (Math.abs(determinant) < 1e-14) {
      return Double.POSITIVE_INFINITY;
    }
    Vec3 s = start.minus(a);
    double u = s.dot(p) / determinant;
    Vec3 q = s.cross(ab);
    double v = way.dot(q) / determinant;
    boolean inside = u >= 0 && v >= 0 && u + v <= 1;
    return inside ? ac.dot(q) / determinant : Double.POSITIVE_INFINITY;
  }
}
