package org.underlee.geom;

/** A point or a direction in a plane. */
public record Vec2(double x, double y) {
  /** 2⁶⁴ over the golden ratio, made odd: spreads numbers that lie close together. */
  private static final long MIX = 0x9E3779B97F4A7C15L;

  public Vec2 plus(Vec2 o) {
    return new Vec2(x + o.x, y + o.y);
  }

  public Vec2 minus(Vec2 o) {
    return new Vec2(x - o.x, y - o.y);
  }

  public Vec2 times(double k) {
    return new Vec2(x * k, y * k);
  }

  public double dot(Vec2 o) {
    return x * o.x + y * o.y;
  }

  /** The z component of the cross product: twice the signed area of the triangle they span. */
  public double cross(Vec2 o) {
    return x * o.y - y * o.x;
  }

  public double length() {
    return Math.hypot(x, y);
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof Vec2 v && Double.compare(x, v.x) == 0 && Double.compare(y, v.y) == 0;
  }

  @Override
  public int hashCode() {
    return hash(hash(0, x), y);
  }

  /** Carries every bit of a number into the lower half, where hash tables look. */
  static int hash(int before, double value) {
    long mixed = (before + Double.doubleToLongBits(value)) * MIX;
    return (int) (mixed ^ (mixed >>> 32));
  }
}
