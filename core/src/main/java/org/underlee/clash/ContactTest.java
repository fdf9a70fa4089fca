package org.underlee.clash;

import java.util.List;
import java.util.Optional;
import org.underlee.geom.Box;
import org.underlee.geom.Bvh;
import org.underlee.geom.Tolerance;
import org.underlee.geom.Vec3;

/**
 * Tests two bodies. Whether their surfaces meet is decided without rounding; how deep, by the least
 * move that parts them.
 *
 * @param tolerance what this move parts is still contact: drawing accuracy. It is never less than
 *     the noise of the coordinates
 * @param clearance how near is too near. It says nothing about contact, and the tolerance nothing
 *     about it
 */
public record ContactTest(double tolerance, double clearance) {
  /**
   * @throws IllegalArgumentException when either is below zero or no number
   */
  public ContactTest {
    if (!(tolerance >= 0 && clearance >= 0)) {
      throw new IllegalArgumentException(
          "a tolerance and a clearance are zero or more, got " + tolerance + ", " + clearance);
    }
  }

  /** How the two stand; empty when they are apart by the clearance or more. */
  public Optional<Contact> of(Solid a, Solid b) {
    double noise = noise(a, b);
    double near = Math.max(clearance, noise);
    if (!a.bounds().grown(near).meets(b.bounds())) {
      return Optional.empty();
    }
    if (isSame(a, b, noise)) {
      double depth = Overlap.width(a);
      return Optional.of(
          new Contact(ClashKind.DUPLICATE, depth, 0, a.isConvex(), a.bounds().centre()));
    }
    Bvh one = a.tree();
    Bvh other = b.tree();
    int[] pairs = one.meeting(other);
    if (pairs.length > 0) {
      return Optional.of(meeting(Overlap.of(a, b, pairs, tolerance), noise));
    }
    if (isInside(a, b)) {
      return Optional.of(meeting(Overlap.nested(a, b), noise));
    }
    if (isInside(b, a)) {
      return Optional.of(meeting(Overlap.nested(b, a), noise));
    }
    double distance = one.distance(other, near);
    if (distance > near || (distance > noise && distance > clearance - noise)) {
      return Optional.empty();
    }
    ClashKind kind = distance <= noise ? ClashKind.TOUCH : ClashKind.GAP;
    return Optional.of(new Contact(kind, 0, distance, true, between(a.bounds(), b.bounds())));
  }

  private Contact meeting(Overlap overlap, double noise) {
    boolean thick = overlap.depth() > Math.max(tolerance, noise);
    return new Contact(
        thick ? ClashKind.INTERSECT : ClashKind.TOUCH,
        overlap.depth(),
        0,
        overlap.measured(),
        overlap.middle());
  }

  /** Two surfaces that do not meet: either all of one is inside of the other, or none of it. */
  private static boolean isInside(Solid inner, Solid outer) {
    return inner.mesh().vertexCount() > 0 && outer.holds(inner.mesh().point(0, 0));
  }

  private static double noise(Solid a, Solid b) {
    return Tolerance.forCoordinates(Math.max(reach(a.bounds()), reach(b.bounds()))).same();
  }

  private static double reach(Box box) {
    return Math.max(box.min().length(), box.max().length());
  }

  /**
   * The same box, the same volume, and every corner of each within reach of the other's surface.
   */
  private static boolean isSame(Solid a, Solid b, double noise) {
    return isNear(a.bounds().min(), b.bounds().min(), noise)
        && isNear(a.bounds().max(), b.bounds().max(), noise)
        && liesOn(a, b, noise)
        && liesOn(b, a, noise);
  }

  private static boolean isNear(Vec3 p, Vec3 q, double noise) {
    return p.distance(q) <= 2 * noise;
  }

  private static boolean liesOn(Solid a, Solid b, double noise) {
    for (int t = 0; t < a.mesh().triangleCount(); t++) {
      Vec3 middle =
          a.mesh().point(t, 0).plus(a.mesh().point(t, 1)).plus(a.mesh().point(t, 2)).times(1.0 / 3);
      for (Vec3 p : List.of(a.mesh().point(t, 0), middle)) {
        if (b.tree().distance(p) > 2 * noise) {
          return false;
        }
      }
    }
    return true;
  }

  /** Where the boxes are nearest. */
  private static Vec3 between(Box a, Box b) {
    return new Vec3(
        middle(a.min().x(), a.max().x(), b.min().x(), b.max().x()),
        middle(a.min().y(), a.max().y(), b.min().y(), b.max().y()),
        middle(a.min().z(), a.max().z(), b.min().z(), b.max().z()));
  }

  private static double middle(double aLow, double aHigh, double bLow, double bHigh) {
    return (Math.max(aLow, bLow) + Math.min(aHigh, bHigh)) / 2;
  }
}
