package org.underlee.geom;

/**
 * An affine map of space: a point {@code p} goes to {@code origin + x·p.x + y·p.y + z·p.z}.
 *
 * @param x image of the x direction (likewise y, z)
 */
public record Transform(Vec3 origin, Vec3 x, Vec3 y, Vec3 z) {
  public static final Transform IDENTITY = new Transform(Vec3.ZERO, Vec3.X, Vec3.Y, Vec3.Z);

  public static Transform translation(Vec3 by) {
    return new Transform(by, Vec3.X, Vec3.Y, Vec3.Z);
  }

  public static Transform scaling(double k) {
    return new Transform(Vec3.ZERO, Vec3.X.times(k), Vec3.Y.times(k), Vec3.Z.times(k));
  }

  /**
   * A right-handed rigid frame with the given z axis, and its x axis as near to {@code xHint} as
   * square to z allows.
   *
   * @throws ArithmeticException when the two directions are parallel or have no length
   */
  public static Transform frame(Vec3 origin, Vec3 zAxis, Vec3 xHint) {
    Vec3 z = zAxis.unit();
    Vec3 x = xHint.minus(z.times(xHint.dot(z))).unit();
    return new Transform(origin, x, z.cross(x), z);
  }

  public Vec3 apply(Vec3 p) {
    // Written out, here and below: millions of points go through, and none should leave garbage.
    return new Vec3(
        origin.x() + (x.x() * p.x() + y.x() * p.y() + z.x() * p.z()),
        origin.y() + (x.y() * p.x() + y.y() * p.y() + z.y() * p.z()),
        origin.z() + (x.z() * p.x() + y.z() * p.y() + z.z() * p.z()));
  }

  /** The images of points, three numbers each, to the last bit those of {@link #apply}. */
  double[] applyAll(double[] xyz) {
    double[] moved = new double[xyz.length];
    for (int i = 0; i < xyz.length; i += 3) {
      double px = xyz[i];
      double py = xyz[i + 1];
      double pz = xyz[i + 2];
      moved[i] = origin.x() + (x.x() * px + y.x() * py + z.x() * pz);
      moved[i + 1] = origin.y() + (x.y() * px + y.y() * py + z.y() * pz);
      moved[i + 2] = origin.z() + (x.z() * px + y.z() * py + z.z() * pz);
    }
    return moved;
  }

  /** The image of a direction: the origin plays no part. */
  public Vec3 direction(Vec3 d) {
    return new Vec3(
        x.x() * d.x() + y.x() * d.y() + z.x() * d.z(),
        x.y() * d.x() + y.y() * d.y() + z.y() * d.z(),
        x.z() * d.x() + y.z() * d.y() + z.z() * d.z());
  }

  /** The map that does {@code inner} first and then this one. */
  public Transform after(Transform inner) {
    return new Transform(
        apply(inner.origin), direction(inner.x), direction(inner.y), direction(inner.z));
  }

  /** Negative when the map mirrors. */
  public double determinant() {
    return x.dot(y.cross(z));
  }

  /**
   * The inverse map.
   *
   * @throws ArithmeticException when this map flattens space
   */
  public Transform inverse() {
    double determinant = determinant();
    if (!(Math.abs(determinant) > 1e-300)) {
      throw new ArithmeticException("a flattening transform has no inverse: " + this);
    }
    Vec3 rowX = y.cross(z).times(1 / determinant);
    Vec3 rowY = z.cross(x).times(1 / determinant);
    Vec3 rowZ = x.cross(y).times(1 / determinant);
    Vec3 ix = new Vec3(rowX.x(), rowY.x(), rowZ.x());
    Vec3 iy = new Vec3(rowX.y(), rowY.y(), rowZ.y());
    Vec3 iz = new Vec3(rowX.z(), rowY.z(), rowZ.z());
    Vec3 back = new Vec3(-rowX.dot(origin), -rowY.dot(origin), -rowZ.dot(origin));
    return new Transform(back, ix, iy, iz);
  }

  /** Where {@code p} lies in a rigid frame: cheaper and more exact than {@link #inverse()}. */
  public Vec3 toLocal(Vec3 p) {
    Vec3 d = p.minus(origin);
    return new Vec3(d.dot(x), d.dot(y), d.dot(z));
  }

  /** Where points lie in a rigid frame, three numbers each, to the last bit as {@link #toLocal}. */
  double[] toLocalAll(double[] xyz) {
    double[] local = new double[xyz.length];
    for (int i = 0; i < xyz.length; i += 3) {
      double dx = xyz[i] - origin.x();
      double dy = xyz[i + 1] - origin.y();
      double dz = xyz[i + 2] - origin.z();
      local[i] = dx * x.x() + dy * x.y() + dz * x.z();
      local[i + 1] = dx * y.x() + dy * y.y() + dz * y.z();
      local[i + 2] = dx * z.x() + dy * z.y() + dz * z.z();
    }
    return local;
  }

  /** A direction in a rigid frame. */
  public Vec3 directionToLocal(Vec3 d) {
    return new Vec3(d.dot(x), d.dot(y), d.dot(z));
  }
}
