package org.underlee.geom;

import java.util.Collection;

/** A box along the axes, with {@code min ≤ max} in each direction; or empty. */
public record Box(Vec3 min, Vec3 max) {
  private static final double INF = Double.POSITIVE_INFINITY;

  /** The box that holds nothing; joining it to another gives the other. */
  public static final Box EMPTY = new Box(new Vec3(INF, INF, INF), new Vec3(-INF, -INF, -INF));

  public static Box around(Collection<Box> boxes) {
    Box all = EMPTY;
    for (Box box : boxes) {
      all = all.union(box);
    }
    return all;
  }

  public boolean isEmpty() {
    return min.x() > max.x();
  }

  public Box with(Vec3 p) {
    return union(new Box(p, p));
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

  public Vec3 centre() {
    return min.plus(max).times(0.5);
  }

  public Vec3 size() {
    return max.minus(min);
  }

  /** The box around this one moved by an affine map. */
  public Box moved(Transform map) {
    Box moved = EMPTY;
    for (int corner = 0; corner < 8 && !isEmpty(); corner++) {
      double x = (corner & 1) == 0 ? min.x() : max.x();
      double y = (corner & 2) == 0 ? min.y() : max.y();
      double z = (corner & 4) == 0 ? min.z() : max.z();
      moved = moved.with(map.apply(new Vec3(x, y, z)));
    }
    return moved;
  }
}
