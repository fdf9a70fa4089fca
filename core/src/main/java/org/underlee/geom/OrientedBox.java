package org.underlee.geom;

import java.util.ArrayList;
import java.util.List;

/**
 * The box around a bar, turned with it. {@code axis} runs along the bar; {@code up} is the section
 * direction nearest the vertical and {@code side} is square to both, so a joist on edge has a depth
 * greater than its width. For an upright bar {@code up} and {@code side} are both level.
 */
public record OrientedBox(
    Vec3 centre, Vec3 axis, Vec3 side, Vec3 up, double length, double width, double depth) {

  /** One end of the axis: {@code -1} for the tail, {@code +1} for the tip. */
  public Vec3 end(int sign) {
    return centre.plus(axis.times(sign * length / 2));
  }

  public double bottom() {
    return centre.z() - halfHeight();
  }

  public double top() {
    return centre.z() + halfHeight();
  }

  private double halfHeight() {
    return reach(axis.z(), side.z(), up.z());
  }

  /** The box along the world's axes around it. */
  public Box bounds() {
    Vec3 half =
        new Vec3(
            reach(axis.x(), side.x(), up.x()),
            reach(axis.y(), side.y(), up.y()),
            reach(axis.z(), side.z(), up.z()));
    return new Box(centre.minus(half), centre.plus(half));
  }

  private double reach(double a, double s, double u) {
    return (Math.abs(a) * length + Math.abs(s) * width + Math.abs(u) * depth) / 2;
  }

  public List<Vec3> corners() {
    List<Vec3> corners = new ArrayList<>(8);
    for (int i = 0; i < 8; i++) {
      corners.add(
          centre
              .plus(axis.times(((i & 1) - 0.5) * length))
              .plus(side.times(((i >> 1 & 1) - 0.5) * width))
              .plus(up.times(((i >> 2) - 0.5) * depth)));
    }
    return corners;
  }
}
