package org.underlee.geom;

import java.util.Collection;

/** A box along the axes, with {@code min ≤ max} in each direction; or empty. */
public record Box(Vec3 min, Vec3 max) {
  private static final double INF = Double.POSITIVE_INFINITY;

  /** Thousands of times what one sum or product of doubles is rounded by. */
  private static final double ROUNDING = 1e-12;

  /** The box that holds nothing; joining it to another gives the other. */
  public static final Box EMPTY = new Box(new Vec3(INF, INF, INF), new Vec3(-INF, -INF, -INF));

  public static Box around(Collection<Box> boxes) {
    Box all = EMPTY;
    for (Box box : boxes) {
      all = all.union(box);
    }
    return all;
  }

  /** Around points, three numbers each. */
  static Box around(double[] xyz) {
    double[] low = {INF, INF, INF};
    double[] high = {-INF, -INF, -INF};
    for (int i = 0; i < xyz.length; i += 3) {
      for (int axis = 0; axis < 3; axis++) {
        low[axis] = Math.min(low[axis], xyz[i + axis]);
        high[axis] = Math.max(high[axis], xyz[i + axis]);
      }
    }
    return new Box(new Vec3(low[0], low[1], low[2]), new Vec3(high[0], high[1], high[2]));
  }

  public boolean isEmpty() {
    return min.x() > max.x();
  }

  public Box with(Vec3 p) {
    return new Box(
        new Vec3(Math.min(min.x(), p.x()), Math.min(min.y(), p.y()), Math.min(min.z(), p.z())),
        new Vec3(Math.max(max.x(), p.x()), Math.max(max.y(), p.y()), Math.max(max.z(), p.z())));
  }

  public Box union(Box o) {
    return new Box(
        new Vec3(
            Math.min(min.x(), o.min.x()),
            Math.min(min.y(), o.min.y()),
            Math.min(min.z(), o.min.z())),
        new Vec3(
            Math.max(max.x(), o.max.x()),
            Math.max(max.y(), o.max.y()),
            Math.max(max.z(), o.max.z())));
  }

  public Box grown(double by) {
    Vec3 d = new Vec3(by, by, by);
    return new Box(min.minus(d), max.plus(d));
  }

  /** Whether the two share a point, faces included. */
  public boolean meets(Box o) {
    return min.x() <= o.max.x()
        && o.min.x() <= max.x()
        && min.y() <= o.max.y()
        && o.min.y() <= max.y()
        && min.z() <= o.max.z()
        && o.min.z() <= max.z();
  }

  /** Whether all of another box lies in this one, faces included. */
  public boolean holds(Box o) {
    return with(o.min).with(o.max).equals(this);
  }

  public Vec3 centre() {
    return min.plus(max).times(0.5);
  }

  public Vec3 size() {
    return max.minus(min);
  }

  /**
   * A box that surely holds this one moved by an affine map, however what is in it is computed:
   * found sooner than {@link #moved}, and larger by more than sums and products are rounded by.
   */
  public Box surelyMoved(Transform map) {
    if (isEmpty()) {
      return EMPTY;
    }
    Vec3 c = map.apply(centre());
    Vec3 h = size().times(0.5);
    Vec3 half =
        new Vec3(
            grown(reach(map.x().x(), map.y().x(), map.z().x(), h), c.x()),
            grown(reach(map.x().y(), map.y().y(), map.z().y(), h), c.y()),
            grown(reach(map.x().z(), map.y().z(), map.z().z(), h), c.z()));
    return new Box(c.minus(half), c.plus(half));
  }

  private static double reach(double x, double y, double z, Vec3 half) {
    return Math.abs(x) * half.x() + Math.abs(y) * half.y() + Math.abs(z) * half.z();
  }

  private static double grown(double half, double centre) {
    return half + ROUNDING * (half + Math.abs(centre));
  }

  /** The box around this one moved by an affine map. */
  public Box moved(Transform map) {
    if (isEmpty()) {
      return EMPTY;
    }
    double[] corners = new double[3 * 8];
    for (int corner = 0; corner < 8; corner++) {
      corners[3 * corner] = (corner & 1) == 0 ? min.x() : max.x();
      corners[3 * corner + 1] = (corner & 2) == 0 ? min.y() : max.y();
      corners[3 * corner + 2] = (corner & 4) == 0 ? min.z() : max.z();
    }
    return around(map.applyAll(corners));
  }
}
