package org.underlee.drainage.flow;

/**
 * Water that falls into a stretch of a gutter, evenly along the stretch.
 *
 * @param from metres from the start of the gutter
 * @param to more than {@code from}: what drips has a width
 * @param flow cubic metres per second in all
 */
public record Inflow(double from, double to, double flow) {
  public Inflow {
    if (!(to > from) || !(flow >= 0) || Double.isInfinite(flow)) {
      throw new IllegalArgumentException(
          "an inflow of "
              + flow
              + " m3/s from "
              + from
              + " to "
              + to
              + " m is none; expected a flow of zero or more over a length");
    }
  }
}
