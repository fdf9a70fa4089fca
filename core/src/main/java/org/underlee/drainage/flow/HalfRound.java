package org.underlee.drainage.flow;

/** A gutter that is half of a circle. */
public record HalfRound(double diameter) implements GutterSection {
  public HalfRound {
    if (!(diameter > 0) || Double.isInfinite(diameter)) {
      throw new IllegalArgumentException(
          "a half-round gutter of diameter " + diameter + " m is none; expected more than zero");
    }
  }

  @Override
  public double depth() {
    return diameter / 2;
  }

  /** Half of the angle that the surface spans, seen from the centre. */
  private double halfAngle(double inside) {
    return Math.acos(1 - inside / depth());
  }

  @Override
  public double area(double y) {
    double inside = Math.min(y, depth());
    double r = depth();
    double chord = topWidth(inside) / 2;
    return r * r * halfAngle(inside) - chord * (r - inside) + diameter * (y - inside);
  }

  @Override
  public double topWidth(double y) {
    double inside = Math.min(y, depth());
    return 2 * Math.sqrt(inside * (diameter - inside));
  }

  @Override
  public double wettedPerimeter(double y) {
    double inside = Math.min(y, depth());
    return diameter * halfAngle(inside) + 2 * (y - inside);
  }

  @Override
  public double firstMoment(double y) {
    double r = depth();
    double inside = Math.min(y, r);
    double above = y - inside;
    double chord = topWidth(inside) / 2;
    double below = 2.0 / 3 * chord * chord * chord - area(inside) * (r - inside);
    return below + above * area(inside) + diameter * above * above / 2;
  }
}
