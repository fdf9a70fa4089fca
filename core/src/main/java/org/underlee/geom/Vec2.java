package org.underlee.geom;

/** A point or a direction in a plane. */
public record Vec2(double x, double y) {
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
}
