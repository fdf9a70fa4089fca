package org.underlee.geom;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Bodies to try on each other. */
public final class Bodies {
  private Bodies() {}

  /** About its middle. */
  public static Mesh box(double x, double y, double z) {
    List<Vec2> ring =
        List.of(
            new Vec2(-x / 2, -y / 2),
            new Vec2(x / 2, -y / 2),
            new Vec2(x / 2, y / 2),
            new Vec2(-x / 2, y / 2));
    return swept(new Outline(ring, List.of()), z);
  }

  /** A pipe along z about its middle; with a bore where one is given. */
  public static Mesh pipe(double outer, double bore, double length, int sides) {
    List<List<Vec2>> holes = bore > 0 ? List.of(ring(bore / 2, sides)) : List.of();
    return swept(new Outline(ring(outer / 2, sides), holes), length);
  }

  private static List<Vec2> ring(double r, int sides) {
    List<Vec2> ring = new ArrayList<>();
    for (int i = 0; i < sides; i++) {
      double angle = 2 * Math.PI * i / sides;
      ring.add(new Vec2(r * Math.cos(angle), r * Math.sin(angle)));
    }
    return ring;
  }

  /** An L, which is not convex. */
  public static Mesh angle(double leg, double thick, double length) {
    List<Vec2> ring =
        List.of(
            new Vec2(0, 0),
            new Vec2(leg, 0),
            new Vec2(leg, thick),
            new Vec2(thick, thick),
            new Vec2(thick, leg),
            new Vec2(0, leg));
    return swept(new Outline(ring, List.of()), length);
  }

  private static Mesh swept(Outline outline, double length) {
    Transform half = Transform.translation(new Vec3(0, 0, -length / 2));
    return Extrusion.straight(half, outline, length).mesh();
  }

  /** A rigid frame anywhere within a distance. */
  public static Transform frame(Random random, double reach) {
    Vec3 z = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    Vec3 x = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    Vec3 at =
        new Vec3(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.5);
    return Transform.frame(at.times(2 * reach), z, x);
  }
}
