package org.underlee.panel.model;

import java.util.List;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.picture.Camera;

/**
 * Where the 3-D picture is seen from, as a hand turns it.
 *
 * @param turn about the upright axis, radians: 0 looks from +x
 * @param rise of the eye above the level plane, radians; below zero it looks up from below
 * @param target what stays in the middle, world metres
 * @param height metres from the lower to the upper border
 */
public record Orbit(double turn, double rise, Vec3 target, double height) {
  /** Just short of straight up and down, where "up" would be undefined. */
  private static final double STEEPEST = Math.PI / 2 - 1e-4;

  private static final double NEAREST = 0.02;
  private static final double FURTHEST = 2000;

  public Orbit {
    rise = Math.max(-STEEPEST, Math.min(STEEPEST, rise));
    height = Math.max(NEAREST, Math.min(FURTHEST, height));
  }

  /** A view from a direction that holds all points. */
  public static Orbit around(Vec3 toViewer, List<Vec3> points, double aspect) {
    Camera fitted = Camera.lookingFrom(toViewer, points, aspect);
    Vec3 d = toViewer.unit();
    double turn = Math.hypot(d.x(), d.y()) < 1e-9 ? -Math.PI / 2 : Math.atan2(d.y(), d.x());
    return new Orbit(turn, Math.asin(d.z()), fitted.frame().origin(), fitted.height());
  }

  public Vec3 toViewer() {
    double level = Math.cos(rise);
    return new Vec3(level * Math.cos(turn), level * Math.sin(turn), Math.sin(rise));
  }

  private Transform frame() {
    Vec3 right = new Vec3(-Math.sin(turn), Math.cos(turn), 0);
    return Transform.frame(target, toViewer(), right);
  }

  public Camera camera() {
    return new Camera(frame(), height, Double.POSITIVE_INFINITY);
  }

  /** The view brought to points, from the same side. */
  Orbit brought(List<Vec3> points, double aspect, Bringing how) {
    return switch (how) {
      case NOT -> this;
      case INTO_VIEW -> holds(points, aspect) ? this : at(points, aspect);
      case NEAR -> around(toViewer(), points, aspect);
    };
  }

  /** Whether all points are seen in a picture of an aspect, width over height. */
  private boolean holds(List<Vec3> points, double aspect) {
    Transform f = frame();
    return points.stream()
        .map(f::toLocal)
        .allMatch(p -> Math.abs(p.y()) <= height / 2 && Math.abs(p.x()) <= aspect * height / 2);
  }

  /** The same view with points in its middle, and from further away where they need it. */
  private Orbit at(List<Vec3> points, double aspect) {
    Orbit fitted = around(toViewer(), points, aspect);
    return new Orbit(turn, rise, fitted.target, Math.max(height, fitted.height));
  }

  /** Turned by a drag, in shares of the picture's height. */
  public Orbit turned(double right, double down) {
    return new Orbit(turn - right * Math.PI, rise + down * Math.PI, target, height);
  }

  /** The picture moved under the hand, in shares of its height. */
  public Orbit moved(double right, double down) {
    Transform f = frame();
    Vec3 by = f.x().times(-right * height).plus(f.y().times(down * height));
    return new Orbit(turn, rise, target.plus(by), height);
  }

  /**
   * Nearer or further, with what is under the cursor staying there.
   *
   * @param factor of what is seen: below 1 is nearer
   * @param x from the middle to the right, in shares of the picture's height; y up
   */
  public Orbit zoomed(double factor, double x, double y) {
    Transform f = frame();
    double next = Math.max(NEAREST, Math.min(FURTHEST, height * factor));
    double shift = height - next;
    Vec3 by = f.x().times(x * shift).plus(f.y().times(y * shift));
    return new Orbit(turn, rise, target.plus(by), next);
  }
}
