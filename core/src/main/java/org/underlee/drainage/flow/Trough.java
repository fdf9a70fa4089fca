package org.underlee.drainage.flow;

/** A gutter with a flat bottom and straight sides: a box, or wider at the top. */
public record Trough(double bottom, double top, double depth) implements GutterSection {
  public Trough {
    if (!(bottom > 0) || !(top >= bottom) || !(depth > 0)) {
      throw new IllegalArgumentException(
          "a gutter of bottom "
              + bottom
              + " m, top "
              + top
              + " m and depth "
              + depth
              + " m is none; each must be more than zero and the top no narrower");
    }
  }

  public static Trough box(double width, double depth) {
    return new Trough(width, width, depth);
  }

  /** How far each side leans out per metre of rise. */
  private double lean() {
    return (top - bottom) / (2 * depth);
  }

  @Override
  public double area(double y) {
    double inside = Math.min(y, depth);
    return inside * (bottom + lean() * inside) + top * (y - inside);
  }

  @Override
  public double topWidth(double y) {
    return bottom + 2 * lean() * Math.min(y, depth);
  }

  @Override
  public double wettedPerimeter(double y) {
    double inside = Math.min(y, depth);
    double lean = lean();
    return bottom + 2 * inside * Math.sqrt(1 + lean * lean) + 2 * (y - inside);
  }

  @Override
  public double firstMoment(double y) {
    double inside = Math.min(y, depth);
    double above = y - inside;
    double below = inside * inside * (bottom / 2 + lean() * inside / 3);
    return below + above * area(inside) + top * above * above / 2;
  }
}
