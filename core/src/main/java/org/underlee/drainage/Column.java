package org.underlee.drainage;

import java.util.List;
import org.underlee.geom.Vec2;

/**
 * A piece of the plan with the same faces above each other everywhere: between two lines across the
 * field, and two edges.
 *
 * @param slab its number in the sweep
 * @param lowLeft v of its lower edge at {@code left}, likewise the others
 * @param catchment number of the bay whose rain falls here, or −1
 * @param outlet number of the outlet whose opening is here, or −1
 * @param layers from the highest down
 */
record Column(
    int slab,
    double left,
    double right,
    double lowLeft,
    double lowRight,
    double highLeft,
    double highRight,
    int catchment,
    int outlet,
    List<Layer> layers) {
  /** Beyond the plan. */
  static final Column NOTHING = new Column(-1, 0, 0, 0, 0, 0, 0, -1, -1, List.of());

  double area() {
    return (right - left) * ((highLeft - lowLeft) + (highRight - lowRight)) / 2;
  }

  double width() {
    return right - left;
  }

  double middleU() {
    return (left + right) / 2;
  }

  double middleV() {
    return (lowLeft + lowRight + highLeft + highRight) / 4;
  }

  double low() {
    return (lowLeft + lowRight) / 2;
  }

  double high() {
    return (highLeft + highRight) / 2;
  }

  List<Vec2> outline() {
    return List.of(
        new Vec2(left, lowLeft),
        new Vec2(right, lowRight),
        new Vec2(right, highRight),
        new Vec2(left, highLeft));
  }
}
