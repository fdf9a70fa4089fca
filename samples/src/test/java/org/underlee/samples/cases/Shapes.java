package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.underlee.samples.Frame;
import org.underlee.samples.Xyz;

/**
 * Bodies in the frame of a case: u along the house (x), v away from it (y), up (z), millimetres.
 */
final class Shapes {
  /** Facets of a round bar or hole. */
  private static final int SIDES = 24;

  private Shapes() {}

  static double[] at(double a, double b) {
    return new double[] {a, b};
  }

  /** A box from corner to corner, carried along {@code axis}: 0 for u, 1 for v, 2 for up. */
  static Body box(int axis, double u0, double v0, double z0, double u1, double v1, double z1) {
    return switch (axis) {
      case 0 -> alongU(rectangle(v0, z0, v1, z1), List.of(), u0, u1);
      case 1 -> alongV(rectangle(u0, z0, u1, z1), List.of(), v0, v1);
      default -> upward(rectangle(u0, v0, u1, v1), List.of(), z0, z1);
    };
  }

  static List<double[]> rectangle(double a0, double b0, double a1, double b1) {
    return List.of(at(a0, b0), at(a1, b0), at(a1, b1), at(a0, b1));
  }

  /** A polygon inside the circle, its corners on it. */
  static List<double[]> circle(double a, double b, double diameter) {
    List<double[]> ring = new ArrayList<>();
    for (int i = 0; i < SIDES; i++) {
      double angle = 2 * Math.PI * i / SIDES;
      ring.add(
          at(a + diameter / 2 * StrictMath.cos(angle), b + diameter / 2 * StrictMath.sin(angle)));
    }
    return ring;
  }

  /** An outline in (v, z), as a joist is seen from its side, carried along u. */
  static Body alongU(List<double[]> outline, List<List<double[]>> holes, double u0, double u1) {
    return new Body.Prism(Frame.of(new Xyz(u0, 0, 0), Xyz.Y, Xyz.Z), outline, holes, u1 - u0);
  }

  /** A section in (u, z) carried along v. */
  static Body alongV(List<double[]> section, List<List<double[]>> holes, double v0, double v1) {
    return new Body.Prism(
        Frame.of(new Xyz(0, v0, 0), Xyz.Z, Xyz.X),
        swapped(section),
        holes.stream().map(Shapes::swapped).toList(),
        v1 - v0);
  }

  /** A plan in (u, v) carried up. */
  static Body upward(List<double[]> plan, List<List<double[]>> holes, double z0, double z1) {
    return new Body.Prism(Frame.at(new Xyz(0, 0, z0)), plan, holes, z1 - z0);
  }

  /** A section, centred in (across, up), carried from one point to another. */
  static Body between(List<double[]> section, Xyz from, Xyz to) {
    Xyz axis = to.minus(from).unit();
    Xyz across = Math.abs(axis.z()) > 0.99 ? Xyz.X : axis.cross(Xyz.Z).unit();
    double length = Math.sqrt(to.minus(from).dot(to.minus(from)));
    return new Body.Prism(Frame.of(from, across, axis.cross(across)), section, List.of(), length);
  }

  private static List<double[]> swapped(List<double[]> ring) {
    List<double[]> turned = new ArrayList<>();
    ring.forEach(p -> turned.add(at(p[1], p[0])));
    Collections.reverse(turned);
    return turned;
  }
}
