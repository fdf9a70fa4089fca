package org.underlee.drainage.flow;

/**
 * The surface of a pan that follows a joist which sags and is crowned, in metres. It falls from its
 * head (0) to its outlet (span).
 *
 * <p>Source: elastic line of a simply supported beam under even load, {@code 16/5 Δ (ξ - 2ξ³ +
 * ξ⁴)}, whose end rotation is 3.2 Δ/L; a crown is a parabola. A joist that runs past its beam bends
 * otherwise and is not this.
 *
 * @param fall drop over run of the pan on a straight joist
 * @param sag at the middle of the span
 * @param crown of the joist upward at the middle
 */
public record PanSurface(double span, double fall, double sag, double crown) {
  private static final double END_ROTATION = 3.2;
  private static final int PARTS = 4096;
  private static final int THIRDS = 30;

  /** Standing water: where the lowest point is, and how deep it stands. */
  public record Pond(double at, double depth) {}

  public PanSurface {
    if (!(span > 0) || !(sag >= 0)) {
      throw new IllegalArgumentException(
          "a span of " + span + " m with a sag of " + sag + " m is none");
    }
  }

  /** Height over the head of a straight pan. */
  public double height(double x) {
    double part = x / span;
    double line = part - 2 * part * part * part + part * part * part * part;
    return -fall * x - sag * 16 / 5 * line + 4 * crown * part * (1 - part);
  }

  /** Net fall at the head: the crown takes from it. */
  public double atHead() {
    return fall + END_ROTATION * sag / span - 4 * crown / span;
  }

  /** Net fall at the outlet: the sag takes from it. */
  public double atOutlet() {
    return fall - END_ROTATION * sag / span + 4 * crown / span;
  }

  /** The deepest pond; depth 0 at the outlet when all runs off. */
  public Pond pond() {
    double rim = height(span);
    Pond deepest = new Pond(span, 0);
    for (int i = PARTS - 1; i >= 0; i--) {
      double x = span * i / PARTS;
      double here = height(x);
      rim = Math.max(rim, here);
      if (rim - here > deepest.depth()) {
        deepest = new Pond(x, rim - here);
      }
    }
    return deepest.depth() > 0 ? refined(deepest) : deepest;
  }

  /** Between the places beside it, where the surface is one hollow: the range is cut in thirds. */
  private Pond refined(Pond pond) {
    double rim = height(pond.at()) + pond.depth();
    double from = Math.max(0, pond.at() - span / PARTS);
    double to = Math.min(span, pond.at() + span / PARTS);
    for (int i = 0; i < THIRDS; i++) {
      double third = (to - from) / 3;
      if (height(from + third) < height(to - third)) {
        to -= third;
      } else {
        from += third;
      }
    }
    double at = (from + to) / 2;
    return new Pond(at, rim - height(at));
  }
}
