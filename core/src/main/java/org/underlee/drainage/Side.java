package org.underlee.drainage;

/**
 * A stretch of a column's edge with one neighbour.
 *
 * @param beyond the neighbour; {@link Column#NOTHING} where there is nothing at any height
 * @param u0 of one end of it, likewise v0, u1, v1
 * @param du outward direction, −1, 0 or 1, likewise dv
 */
record Side(Column beyond, double u0, double v0, double u1, double v1, int du, int dv) {
  /** Across or down the fall, whichever way it runs. */
  double length() {
    return du != 0 ? v1 - v0 : u1 - u0;
  }

  /** How much of a flow goes out through the stretch, whose edge may be askew. */
  double flux(double flowU, double flowV) {
    return du != 0 ? du * flowU * length() : dv * (flowV * (u1 - u0) - flowU * (v1 - v0));
  }

  double u() {
    return (u0 + u1) / 2;
  }

  double v() {
    return (v0 + v1) / 2;
  }
}
