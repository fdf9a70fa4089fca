package org.underlee.drainage;

/** A plane face of a piece, seen in plan: {@code w = a + b·u + c·v}. */
final class Facet {
  private final int piece;
  private final boolean up;
  private final double a;
  private final double b;
  private final double c;
  private final double[] edges;
  private final boolean thin;
  private final boolean acrossU;
  private final double slope;

  /**
   * @param edges of its outline, four numbers each: u, v of one end, with the lesser u, then of the
   *     other
   * @param thin narrower than a drop
   */
  Facet(int piece, boolean up, double a, double b, double c, double[] edges, boolean thin) {
    this.piece = piece;
    this.up = up;
    this.a = a;
    this.b = b;
    this.c = c;
    this.edges = edges;
    this.thin = thin;
    this.slope = Math.hypot(b, c);
    this.acrossU = span(edges, 0) < span(edges, 1);
  }

  private static double span(double[] edges, int axis) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = axis; i < edges.length; i += 2) {
      least = Math.min(least, edges[i]);
      most = Math.max(most, edges[i]);
    }
    return most - least;
  }

  /** Whether it is narrower along u than along v. */
  boolean acrossU() {
    return acrossU;
  }

  /** Area of the rectangle around its plan. */
  double extent() {
    return span(edges, 0) * span(edges, 1);
  }

  /** Along u. */
  double length() {
    return span(edges, 0);
  }

  int piece() {
    return piece;
  }

  boolean up() {
    return up;
  }

  /** Rise along u, likewise {@link #c()} along v. */
  double b() {
    return b;
  }

  double c() {
    return c;
  }

  /** Not a copy: only for reading. */
  double[] edges() {
    return edges;
  }

  boolean thin() {
    return thin;
  }

  double at(double u, double v) {
    return a + b * u + c * v;
  }

  double slope() {
    return slope;
  }
}
