package org.underlee.drainage;

import java.util.List;
import org.underlee.geom.Vec2;

/**
 * A piece of the plan with the same faces above each other everywhere: between two lines across the
 * field, and two edges. Two columns are one only when they are the same object.
 */
final class Column {
  /** Beyond the plan. */
  static final Column NOTHING = new Column(0, 0, 0, 0, 0, 0, -1, -1, new Stacker());

  private final double left;
  private final double right;
  private final double lowLeft;
  private final double lowRight;
  private final double highLeft;
  private final double highRight;
  private final int catchment;
  private final int outlet;
  private final Layer[] layers;

  // Stretches of the plan are swept at the same time: numbers are known when all are there.
  private int number = -1;
  private int slab = -1;
  private int firstLayer = -1;

  /**
   * @param lowLeft v of its lower edge at {@code left}, likewise the others
   * @param catchment number of the bay whose rain falls here, or −1
   * @param outlet number of the outlet whose opening is here, or −1
   * @param stacker with the faces that lie here
   */
  Column(
      double left,
      double right,
      double lowLeft,
      double lowRight,
      double highLeft,
      double highRight,
      int catchment,
      int outlet,
      Stacker stacker) {
    this.left = left;
    this.right = right;
    this.lowLeft = lowLeft;
    this.lowRight = lowRight;
    this.highLeft = highLeft;
    this.highRight = highRight;
    this.catchment = catchment;
    this.outlet = outlet;
    this.layers = stacker.layers(this);
  }

  /** Given once, by the sweep. */
  void number(int ownNumber, int ownSlab, int ownFirstLayer) {
    this.number = ownNumber;
    this.slab = ownSlab;
    this.firstLayer = ownFirstLayer;
  }

  /** Among all columns, in order of u, then v. */
  int number() {
    return number;
  }

  /** Number of its slab in the sweep. */
  int slab() {
    return slab;
  }

  /** Number of its highest layer among all layers. */
  int firstLayer() {
    return firstLayer;
  }

  /** From the highest down. Not a copy: only for reading. */
  Layer[] layers() {
    return layers;
  }

  double left() {
    return left;
  }

  double right() {
    return right;
  }

  double lowLeft() {
    return lowLeft;
  }

  double lowRight() {
    return lowRight;
  }

  double highLeft() {
    return highLeft;
  }

  double highRight() {
    return highRight;
  }

  int catchment() {
    return catchment;
  }

  int outlet() {
    return outlet;
  }

  double area() {
    return (right - left) * ((highLeft - lowLeft) + (highRight - lowRight)) / 2;
  }

  /** How much of a flow goes out at its lower (−1) or higher (+1) v, as {@link Side#flux} says. */
  double flux(int dv, double flowU, double flowV) {
    double rise = dv > 0 ? highRight - highLeft : lowRight - lowLeft;
    return dv * (flowV * (right - left) - flowU * rise);
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
