package org.underlee.drainage.flow;

/**
 * The inside of a gutter across its length, in metres. Above the rim the sides are taken to stand
 * straight up, so that a flow that overtops still has a depth to tell.
 */
public sealed interface GutterSection permits Trough, HalfRound {
  /** From the lowest point of the inside to the rim. */
  double depth();

  /** Width of the water at the rim. */
  default double rimWidth() {
    return topWidth(depth());
  }

  /** Area of the water that is so deep. */
  double area(double depth);

  /** Width of its surface. */
  double topWidth(double depth);

  /** Length of wall that it touches. */
  double wettedPerimeter(double depth);

  /** The area times the depth of its centroid: the pressure on it, over weight of water. */
  double firstMoment(double depth);

  default double fullArea() {
    return area(depth());
  }
}
