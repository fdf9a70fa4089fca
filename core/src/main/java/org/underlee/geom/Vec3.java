package org.underlee.geom;

/** A point or a direction in space, in metres unless the owner says otherwise. */
public record Vec3(double x, double y, double z) {
  public static final Vec3 ZERO = new Vec3(0, 0, 0);
  public static final Vec3 X = new Vec3(1, 0, 0);
  public static final Vec3 Y = new Vec3(0, 1, 0);
  public static final Vec3 Z = new Vec3(0, 0, 1);

  public Vec3 plus(Vec3 o) {
    return new Vec3(x + o.x, y + o.y, z + o.z);
  }

  public Vec3 minus(Vec3 o) {
    return new Vec3(x - o.x, y - o.y, z - o.z);
  }

  public Vec3 times(double k) {
    return new Vec3(x * k, y * k, z * k);
  }

  public Vec3 negated() {
    return times(-1);
  }

  public double dot(Vec3 o) {
    return x * o.x + y * o.y + z * o.z;
  }

  public Vec3 cross(Vec3 o) {
    return new Vec3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  public double length() {
    return Math.sqrt(dot(this));
  }

  public double distance(Vec3 o) {
    return minus(o).length();
  }

  /**
   * This direction at length one.
   *
   * @throws ArithmeticException for a vector too short to have a direction
   */
  public Vec3 unit() {
    double length = length();
    if (!(length > 1e-300)) {
      throw new ArithmeticException("the vector " + this + " has no direction");
    }
    return times(1 / length);
  }

  /** The horizontal part, with {@code z} zero. */
  public Vec3 horizontal() {
    return new Vec3(x, y, 0);
  }

  public boolean isFinite() {
    return Double.isFinite(x) && Double.isFinite(y) && Double.isFinite(z);
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof Vec3 v
        && Double.compare(x, v.x) == 0
        && Double.compare(y, v.y) == 0
        && Double.compare(z, v.z) == 0;
  }

  /** Round numbers end in zero bits: added up as they are, places on a grid would collide. */
  @Override
  public int hashCode() {
    return Vec2.hash(Vec2.hash(Vec2.hash(0, x), y), z);
  }
}
